package org.airfit.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.UniversalSocket;

/** A reference set as a table: a profile goes on over several rows, one to a dimension. */
final class ReferenceSetTable {

  private static final List<String> COLUMNS = List.of(
      "record",
      "id",
      "name",
      "letters",
      "grooveForm",
      "ball",
      "from",
      "pieces",
      "source",
      "basis",
      "confirmed",
      "deciding",
      "dimension",
      "nominal",
      "deviation",
      "low",
      "high",
      "count",
      "mean",
      "readings",
      "caliper",
      "takes");

  private static final List<String> OF_PROFILE = List.of(
      "name",
      "letters",
      "grooveForm",
      "ball",
      "from",
      "pieces",
      "source",
      "basis",
      "confirmed",
      "deciding",
      "caliper");
  /** Readings are written as count, mean and deviation, which no caliper belongs to. */
  private static final List<String> WRITTEN =
      COLUMNS.stream().filter(column -> !column.equals("caliper")).toList();

  private static final List<String> RECORDS = List.of("set", "profile", "socket");

  private final String file;
  private final Map<String, Started> started = new LinkedHashMap<>();
  private final List<UniversalSocket> sockets = new ArrayList<>();
  private String name = "";

  private ReferenceSetTable(String file) {
    this.file = file;
  }

  static MeasuredSet read(Document document) throws WrongFileException {
    return new ReferenceSetTable(document.name()).read(Table.rows(document, readable()));
  }

  /** A medium may be told; it is not written, as there is but one that is not refused. */
  private static List<String> readable() {
    List<String> columns = new ArrayList<>(COLUMNS);
    columns.add("medium");
    return columns;
  }

  /** A profile whose first row was read. */
  private record Started(
      Field row, PlugProfile.Builder builder, Set<Dimension> known, PieceReadings readings) {}

  private MeasuredSet read(List<Field> rows) throws WrongFileException {
    for (Field row : rows) {
      add(row);
    }
    if (name.isEmpty()) {
      throw new WrongFileException(
          file, "", "has no name; add a row with set under record and the name under name");
    }
    List<PlugProfile> profiles = new ArrayList<>();
    for (Started profile : started.values()) {
      profiles.add(profile.row.build(profile.builder::build));
    }
    List<KnownPlugs> records = new ArrayList<>();
    started.values().forEach(profile -> profile.readings.record().ifPresent(records::add));
    try {
      return new MeasuredSet(ReferenceSet.of(name, profiles).withSockets(sockets), records);
    } catch (IllegalArgumentException e) {
      throw new WrongFileException(file, "", String.valueOf(e.getMessage()));
    }
  }

  private void add(Field row) throws WrongFileException {
    row.find("medium"); // refused before unless it is compressed air
    String record = row.field("record", String.join(", ", RECORDS)).oneOf(RECORDS, word -> word);
    switch (record) {
      case "set" -> {
        Field found = row.field("name", "the name of the set");
        if (!name.isEmpty()) {
          throw found.wrong("is a second name of the set; keep one row with set under record");
        }
        name = found.text();
      }
      case "socket" -> sockets.add(ProfileFields.socket(row));
      default -> profile(row);
    }
    row.requireNothingElse();
  }

  private void profile(Field row) throws WrongFileException {
    String id = row.field("id", "the short name of a profile").text();
    Started profile = started.get(id);
    if (profile == null) {
      profile =
          new Started(row, ProfileFields.head(row, true), new HashSet<>(), PieceReadings.of(row));
      started.put(id, profile);
    } else {
      sameAsBefore(row, id, profile);
    }
    Field label = row.field("dimension", "such as tip diameter");
    Dimension dimension = ProfileFields.dimension(label, label.text());
    if (!profile.known.add(dimension)) {
      throw label.wrong("\"" + label.text() + "\" stands twice for " + id + "; leave one out");
    }
    profile.builder.dimension(dimension, ProfileFields.spread(row, dimension, profile.readings));
  }

  /** Further rows of a profile may leave out what the first said, and may not say anything else. */
  private static void sameAsBefore(Field row, String id, Started profile)
      throws WrongFileException {
    for (String column : OF_PROFILE) {
      Optional<Field> again = row.find(column);
      Optional<Field> told = profile.row.find(column);
      String first = told.isPresent() ? told.get().text() : "";
      if (again.isPresent() && !again.get().text().equals(first)) {
        throw again
            .get()
            .wrong("was \"" + again.get().text() + "\", but the first row of " + id
                + " says " + (first.isEmpty() ? "nothing" : "\"" + first + "\"")
                + "; type the same, or leave the cell empty");
      }
    }
  }

  static List<List<String>> write(ReferenceSet set) {
    boolean isDecidingTold =
        set.profiles().stream().anyMatch(each -> !ProfileFields.deciding(each).isEmpty());
    List<String> columns = WRITTEN.stream()
        .filter(column -> isDecidingTold || !column.equals("deciding"))
        .toList();
    List<List<String>> out = new ArrayList<>();
    out.add(columns);
    row(out, columns, Map.of("record", "set", "name", set.name()));
    for (PlugProfile profile : set.profiles()) {
      Map<String, String> cells = new HashMap<>(ProfileFields.headOf(profile));
      if (profile.provenance().kind() == Provenance.Kind.USER_MEASURED) {
        cells.put("pieces", String.valueOf(profile.provenance().pieces()));
      }
      cells.put("letters", CellWords.join(profile.aliases()));
      cells.put("deciding", CellWords.join(ProfileFields.deciding(profile)));
      if (ProfileFields.needsConfirming(profile)) {
        cells.put("confirmed", "yes");
      }
      profile.dimensions().forEach((dimension, spread) -> {
        cells.put("record", "profile");
        cells.put("id", profile.id());
        cells.put("dimension", dimension.label());
        if (spread instanceof PartSpread.Sample sample) {
          cells.put("count", String.valueOf(sample.pieces()));
        }
        cells.putAll(ProfileFields.fieldsOf(spread));
        row(out, columns, cells);
        cells.clear(); // the first row says the rest
      });
    }
    for (UniversalSocket socket : set.sockets()) {
      row(
          out,
          columns,
          Map.of(
              "record", "socket",
              "name", socket.name(),
              "takes", CellWords.join(socket.profileIds()),
              "source", socket.source().citation(),
              "basis", socket.source().basis().label()));
    }
    return out;
  }

  private static void row(List<List<String>> out, List<String> columns, Map<String, String> cells) {
    out.add(columns.stream().map(column -> cells.getOrDefault(column, "")).toList());
  }
}
