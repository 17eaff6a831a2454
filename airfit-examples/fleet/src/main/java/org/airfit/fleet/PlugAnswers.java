package org.airfit.fleet;

import static org.apache.spark.sql.functions.col;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.files.Csv;
import org.airfit.files.Document;
import org.airfit.files.JobFile;
import org.airfit.files.Json;
import org.airfit.files.ReferenceSetFile;
import org.airfit.files.Refusal;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugVerdict;
import org.airfit.plug.ReferenceSet;
import org.airfit.safety.Caution;
import org.airfit.select.Catalogue;
import org.airfit.working.UnitSystem;
import org.apache.spark.api.java.function.MapPartitionsFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.StructType;
import org.jspecify.annotations.Nullable;

/** Identifies the plugs of a table of readings, as of a measuring campaign. */
final class PlugAnswers {

  /** The columns of an answer. */
  static final StructType SCHEMA = StructType.fromDDL("key STRING, site STRING, outcome STRING,"
      + " verdict STRING, profile STRING, best STRING, chance DOUBLE, slips INT,"
      + " readNext STRING, cautions ARRAY<STRING>, " + Outcome.REJECT_COLUMNS);

  static final List<String> LABELS = List.of("key", "site");

  private static final String READINGS = "atHand.readings.";

  /** What the readings of a plug are told by. */
  static final PackedFields FIELDS = fields();

  private static final int PACKED = 2;
  private static final int CORRUPT = 3;

  private PlugAnswers() {}

  private static PackedFields fields() {
    List<String> dimensions =
        Stream.of(Dimension.values()).map(each -> READINGS + each.label()).toList();
    List<String> paths = new ArrayList<>(List.of(
        "conditions.medium",
        "atHand.where",
        "atHand.instrument",
        "atHand.worn",
        "atHand.noNearCopies"));
    paths.addAll(dimensions);
    return new PackedFields(paths, Set.of(), Set.of("atHand.noNearCopies"), Set.copyOf(dimensions));
  }

  static Dataset<Row> rows(InputTable table) throws WrongTableException {
    return table.rows(LABELS, Map.of("hand", FIELDS), "", DropFields.ITEM);
  }

  /** Reads a reference set, JSON or CSV. */
  static ReferenceSet set(String name, String text) throws WrongFileException {
    return ReferenceSetFile.read(Document.of(
        name, text.stripLeading().startsWith("{") ? Json.read(name, text) : Csv.read(name, text)));
  }

  /**
   * Identifies.
   *
   * @param rows the packed rows
   * @param set the text of the reference set, which can be read
   * @param told where the texts of cautions go
   */
  static Dataset<Row> judged(Dataset<Row> rows, String set, ToldCautions.Everywhere told) {
    return rows.mapPartitions(
        (MapPartitionsFunction<Row, Row>) partition -> {
          ShopCatalogue catalogue =
              new ShopCatalogue("set", set("set", set), Catalogue.of(List.of()), List.of());
          ToldCautions cautions = told.ofPartition();
          return new Mapped(partition, row -> answer(catalogue, row, cautions));
        },
        Encoders.row(SCHEMA));
  }

  /** The answer to a row. */
  static Row answer(ShopCatalogue catalogue, Row row, ToldCautions cautions) {
    @Nullable Object[] cells = new @Nullable Object[SCHEMA.size()];
    cells[0] = row.isNullAt(0) ? null : row.getString(0);
    cells[1] = row.isNullAt(1) ? null : row.getString(1);
    Optional<Refused> refused = Outcome.unread(
        row.isNullAt(0) ? null : row.getString(0),
        row.isNullAt(CORRUPT) ? null : row.getString(CORRUPT),
        LABELS.get(0));
    if (refused.isEmpty()) {
      refused = told(cells, catalogue, row.getString(PACKED), cautions);
    }
    refused.ifPresent(why -> Outcome.reject(cells, SCHEMA, why));
    return RowFactory.create(cells);
  }

  private static Optional<Refused> told(
      @Nullable Object[] cells, ShopCatalogue catalogue, String packed, ToldCautions cautions) {
    try {
      Document document = Document.of("row", job(packed));
      Optional<Refusal> medium = Refusal.of(document);
      if (medium.isPresent()) {
        String field = "conditions.medium";
        return Optional.of(
            new Refused(field, FIELDS.text(packed, field), medium.get().reason()));
      }
      try {
        fill(cells, identified(catalogue, document), cautions);
        return Optional.empty();
      } catch (WrongFileException e) {
        return Optional.of(new Refused(e.place(), FIELDS.text(packed, e.place()), e.complaint()));
      }
    } catch (PackedFields.UnreadableException e) {
      return Optional.of(
          new Refused("", "", "holds a control sign in one of its fields; take it out"));
    } catch (RuntimeException e) { // whatever a row holds, the others are judged
      return Optional.of(new Refused("", "", "could not be judged: " + e));
    }
  }

  /** The job that a row tells. */
  static Map<String, Object> job(String packed) throws PackedFields.UnreadableException {
    Map<String, Object> job = new LinkedHashMap<>(DropFields.ofPlace(
        DropFields.PLACE.pack(Map.of("supply.pressure", "7 bar(g)")), UnitSystem.SI));
    job.putAll(FIELDS.unpack(packed));
    if (job.get("atHand") instanceof Map<?, ?> told) {
      Map<String, Object> hand = new LinkedHashMap<>(Document.fields(told));
      hand.putIfAbsent("where", "a measuring campaign");
      job.put("atHand", hand);
    }
    return job;
  }

  private static Identification identified(ShopCatalogue catalogue, Document document)
      throws WrongFileException {
    Optional<Identification> plug = JobFile.read(document, catalogue).plug();
    if (plug.isEmpty()) {
      throw new WrongFileException(
          document.name(), "atHand.readings", "tells no reading; read one dimension at least");
    }
    return plug.get();
  }

  private static void fill(@Nullable Object[] cells, Identification plug, ToldCautions cautions) {
    int i = LABELS.size();
    cells[i++] = Outcome.VERDICT;
    cells[i++] = plug.verdict().label();
    cells[i++] = plug.profile().map(PlugProfile::id).orElse(null);
    boolean isCompared = plug.verdict() != PlugVerdict.INSUFFICIENT_DATA;
    cells[i++] = isCompared ? plug.best().profile().id() : null;
    cells[i++] = isCompared ? plug.best().probability() : null;
    cells[i++] = plug.slips().size();
    cells[i++] = plug.nextReadings().stream()
        .findFirst()
        .map(next -> next.dimension().label())
        .orElse(null);
    cells[i] = cautions.titles(plug.cautions());
  }

  /** Writes the summary. */
  static void sum(WholeOutput output, Dataset<Row> answers, String headline, List<Caution> cautions)
      throws IOException {
    Summary summary = new Summary(output, "Plugs of a measuring campaign", headline);
    Dataset<Row> verdicts = answers.where(col(Outcome.COLUMN).equalTo(Outcome.VERDICT));
    Dataset<Row> byVerdict = verdicts
        .groupBy("verdict")
        .agg(functions.count("*").as("plugs"))
        .orderBy(col("plugs").desc());
    SharesChart chart = new SharesChart("Plugs by verdict", List.of("plugs"), false);
    byVerdict.collectAsList().forEach(row -> chart.bar(row.getString(0), List.of(row.getLong(1))));
    summary.drawing("verdicts", chart);
    summary.table("by-verdict", "By verdict", byVerdict);
    List<String> kinds = Stream.of(PlugVerdict.values()).map(PlugVerdict::label).toList();
    String counts = kinds.stream()
        .map(kind -> "count_if(verdict = '" + kind + "') as `" + kind + "`")
        .collect(Collectors.joining(", "));
    verdicts.createOrReplaceTempView("airfit_plugs");
    Dataset<Row> byProfile = verdicts
        .sparkSession()
        .sql("select best, count(*) as plugs, " + counts
            + " from airfit_plugs group by best order by plugs desc, best");
    SharesChart profiles = new SharesChart("Verdicts by the profile that fits best", kinds, true);
    byProfile.limit(15).collectAsList().forEach(row -> {
      List<Long> parts = new ArrayList<>();
      kinds.forEach(kind -> parts.add(row.getLong(row.fieldIndex(kind))));
      profiles.bar(row.isNullAt(0) ? "none" : row.getString(0), parts);
    });
    summary.drawing("profiles", profiles);
    summary.table("by-profile", "By the profile that fits best", byProfile);
    summary.table(
        "by-site",
        "By site",
        verdicts
            .groupBy("site", "verdict")
            .agg(functions.count("*").as("plugs"))
            .orderBy("site", "verdict"));
    summary.table(
        "read-next",
        "What to read next",
        verdicts
            .where("profile is null")
            .groupBy("readNext")
            .agg(functions.count("*").as("plugs"))
            .orderBy(col("plugs").desc()));
    Rejects.add(summary, answers);
    summary.complete(cautions);
  }
}
