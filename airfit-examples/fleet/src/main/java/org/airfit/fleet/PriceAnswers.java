package org.airfit.fleet;

import static org.apache.spark.sql.functions.col;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.CatalogueFile;
import org.airfit.files.Document;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.plug.ReferenceSet;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.apache.spark.api.java.function.MapPartitionsFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.StructType;
import org.jspecify.annotations.Nullable;

/** Checks a price list: what the reader of catalogues refuses of its rows, and what the others lack. */
final class PriceAnswers {

  /** The columns of an answer; a row that was read has nothing that it lacks, or asks for something. */
  static final StructType SCHEMA = StructType.fromDDL("key STRING, outcome STRING, kind STRING,"
      + " verdict STRING, lacks ARRAY<STRING>, remarks ARRAY<STRING>, " + Outcome.REJECT_COLUMNS);

  static final List<String> LABELS = List.of("id");

  static final String READY = "ready";
  static final String ASKS = "asks for more";

  private static final String SEVERAL = "stands in this list ";

  /** The fields of an article of a catalogue file. */
  static final PackedFields FIELDS = new PackedFields(
      List.of(
          "kind",
          "name",
          "price",
          "cost",
          "rated",
          "coldest",
          "hottest",
          "material",
          "staticDissipative",
          "outsideDiameter",
          "keptFor",
          "sleeveGuarded",
          "vented",
          "alreadyThere",
          "takes",
          "profile",
          "end",
          "otherEnd",
          "outlets",
          "capacity",
          "droop",
          "atFlow",
          "hose",
          "bore",
          "size",
          "length",
          "wall",
          "roughness",
          "fittings",
          "from",
          "to",
          "upTo",
          "thread"),
      Set.of("fittings"),
      Set.of("staticDissipative", "sleeveGuarded", "vented", "alreadyThere"),
      Set.of("takes", "outlets"));

  private static final int PACKED = 1;
  private static final int CORRUPT = 2;
  private static final int TIMES = 3;

  private PriceAnswers() {}

  /** The packed rows, and how often the id of each stands in the list. */
  static Dataset<Row> rows(InputTable table) throws WrongTableException {
    Dataset<Row> rows = table.rows(LABELS, Map.of("article", FIELDS), "", DropFields.ITEM);
    Dataset<Row> several = rows.where("id is not null")
        .groupBy("id")
        .count()
        .where("count > 1")
        .withColumnRenamed("id", "several");
    return rows.join(several, rows.col("id").equalTo(several.col("several")), "left")
        .select(rows.col("id"), rows.col("article"), rows.col(InputTable.CORRUPT), col("count"));
  }

  /**
   * Checks.
   *
   * @param rows the packed rows
   * @param set the text of the reference set, which can be read
   * @param currency what its prices are in; empty for none
   */
  static Dataset<Row> judged(Dataset<Row> rows, String set, String currency) {
    return rows.mapPartitions(
        (MapPartitionsFunction<Row, Row>) partition -> {
          ReferenceSet profiles = PlugAnswers.set("set", set);
          return new Mapped(partition, row -> answer(profiles, currency, row));
        },
        Encoders.row(SCHEMA));
  }

  /** The answer to a row. */
  static Row answer(ReferenceSet set, String currency, Row row) {
    @Nullable Object[] cells = new @Nullable Object[SCHEMA.size()];
    @Nullable String id = row.isNullAt(0) ? null : row.getString(0);
    cells[0] = id;
    Optional<Refused> refused =
        Outcome.unread(id, row.isNullAt(CORRUPT) ? null : row.getString(CORRUPT), LABELS.get(0));
    if (refused.isEmpty() && id != null) {
      refused = row.isNullAt(TIMES)
          ? read(cells, set, currency, id, row.getString(PACKED))
          : Optional.of(new Refused(
              LABELS.get(0), id, SEVERAL + row.getLong(TIMES) + " times; ids must differ"));
    }
    refused.ifPresent(why -> Outcome.reject(cells, SCHEMA, why));
    return RowFactory.create(cells);
  }

  private static Optional<Refused> read(
      @Nullable Object[] cells, ReferenceSet set, String currency, String id, String packed) {
    try {
      Map<String, Object> article = new LinkedHashMap<>();
      article.put("id", id);
      article.putAll(FIELDS.unpack(packed));
      for (String list : FIELDS.lists()) {
        article.computeIfPresent(
            list, (name, value) -> value instanceof List<?> ? value : List.of(value));
      }
      boolean isAccessory = CatalogueFile.accessoryKinds().contains(article.get("kind"));
      Map<String, Object> catalogue = new LinkedHashMap<>();
      catalogue.put("catalogue", "price list");
      if (!currency.isEmpty()) {
        catalogue.put("currency", currency);
      }
      catalogue.put("parts", isAccessory ? List.of() : List.of(article));
      catalogue.put("accessories", isAccessory ? List.of(article) : List.of());
      try {
        fill(cells, article, CatalogueFile.read(Document.of("row", catalogue), set));
        return Optional.empty();
      } catch (WrongFileException e) {
        String place = e.place().replaceFirst("^(parts|accessories)\\[1\\]\\.?", "");
        String complaint = e.complaint().replace(" (id \"" + id + "\")", "");
        return Optional.of(new Refused(
            place, place.equals("id") ? id : FIELDS.text(packed, field(place)), complaint));
      }
    } catch (PackedFields.UnreadableException e) {
      return Optional.of(
          new Refused("", "", "holds a control sign in one of its fields; take it out"));
    } catch (RuntimeException e) { // whatever a row holds, the others are checked
      return Optional.of(new Refused("", "", "could not be checked: " + e));
    }
  }

  /** An item of a list stands in the column of the list. */
  private static String field(String place) {
    int bracket = place.indexOf('[');
    return bracket < 0 ? place : place.substring(0, bracket);
  }

  private static void fill(
      @Nullable Object[] cells, Map<String, Object> article, ShopCatalogue read) {
    List<String> lacks = new ArrayList<>();
    read.parts().parts().forEach(part -> lacks.addAll(lacks(part)));
    cells[1] = Outcome.VERDICT;
    cells[2] = String.valueOf(article.get("kind"));
    cells[3] = lacks.isEmpty() ? READY : ASKS;
    cells[4] = lacks.toArray(String[]::new);
    cells[5] = read.remarks().toArray(String[]::new);
  }

  /** What a part does not tell that a choice asks for. */
  private static List<String> lacks(Part part) {
    List<String> lacks = new ArrayList<>();
    PartFacts facts = part.facts();
    if (facts.rating().isEmpty()) {
      lacks.add("rated: a part without a rating is not sold");
    }
    if (facts.price().isEmpty()) {
      lacks.add("price: of the part");
    }
    if (facts.material().isEmpty()) {
      lacks.add("material: asked for where the place decides");
    }
    if (facts.coldest().isEmpty() || facts.hottest().isEmpty()) {
      lacks.add("coldest and hottest: asked for where it freezes or is hot");
    }
    boolean isExact = true;
    if (part instanceof Part.Socket socket) {
      isExact = socket.capacityRange().isExact();
    } else if (part instanceof Part.Device device) {
      isExact = device.capacityRange().isExact();
    } else if (part instanceof Part.Splitter splitter) {
      isExact = splitter.capacityRange().isExact();
    } else if (part instanceof Part.Regulator regulator) {
      isExact = regulator.capacityRange().isExact();
      if (!regulator.droopRange().isExact()) {
        lacks.add("droop and atFlow: all from none to 1 bar is judged");
      }
    } else if (part instanceof Part.Hose hose) {
      if (facts.outsideDiameter().isEmpty()) {
        lacks.add("outsideDiameter: clamps are chosen by it");
      }
      if (!hose.conduitRange().isExact()) {
        lacks.add("bore or wall: the worst of what it may be is taken");
      }
    }
    if (!isExact) {
      lacks.add("capacity: only a range; add b to it, or xT to Cv or Kv");
    }
    return lacks;
  }

  /** Writes the summary. */
  static void sum(WholeOutput output, Dataset<Row> answers, String headline) throws IOException {
    Summary summary = new Summary(output, "Check of a price list", headline);
    Dataset<Row> verdicts = answers.where(col(Outcome.COLUMN).equalTo(Outcome.VERDICT));
    List<String> kinds = List.of(READY, ASKS);
    Dataset<Row> byKind = verdicts
        .groupBy("kind")
        .agg(
            functions.count("*").as("articles"),
            functions.expr("count_if(verdict = '" + READY + "')").as(READY),
            functions.expr("count_if(verdict = '" + ASKS + "')").as(ASKS))
        .orderBy(col("articles").desc(), col("kind"));
    SharesChart chart = new SharesChart("Articles by kind", kinds, false);
    byKind
        .collectAsList()
        .forEach(row -> chart.bar(
            row.getString(0),
            List.of(row.getLong(row.fieldIndex(READY)), row.getLong(row.fieldIndex(ASKS)))));
    summary.drawing("kinds", chart);
    summary.table("by-kind", "By kind", byKind);
    summary.table(
        "lacks",
        "What articles lack",
        verdicts
            .select(col("kind"), functions.explode(col("lacks")).as("lacks"))
            .groupBy("kind", "lacks")
            .agg(functions.count("*").as("articles"))
            .orderBy(col("articles").desc(), col("kind"), col("lacks")));
    summary.table(
        "remarks",
        "Ends that may be meant otherwise",
        verdicts
            .select(col("key"), functions.explode(col("remarks")).as("remark"))
            .orderBy("key"));
    Rejects.add(summary, answers);
    summary.complete(List.of());
  }
}
