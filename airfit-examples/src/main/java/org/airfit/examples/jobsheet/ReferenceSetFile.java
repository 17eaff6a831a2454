package org.airfit.examples.jobsheet;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.plug.Dimension;
import org.airfit.plug.PartSpread;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.UniversalSocket;
import org.airfit.source.Basis;
import org.airfit.source.Source;

/**
 * Reads and writes a reference set, as JSON or as a table (CSV); docs/reference-set-file.md has the fields.
 *
 * <p>What is written reads back as the very same set, to the last bit of every length; a set that would not is refused.
 */
final class ReferenceSetFile {

  private static final JsonMapper MAPPER = JsonMapper.builder().build();

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
      "dimension",
      "nominal",
      "deviation",
      "low",
      "high",
      "count",
      "mean",
      "readings",
      "takes");

  private static final List<String> OF_PROFILE = COLUMNS.subList(2, 11);
  private static final List<String> RECORDS = List.of("set", "profile", "socket");

  private ReferenceSetFile() {}

  /** Reads a set; a name that ends in .csv is a table, any other JSON. */
  static ReferenceSet read(Path path) throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    String text = Field.read(path, "a set file, .csv or .json");
    return isTable(path) ? ofCsv(file, text) : ofJson(file, text);
  }

  /** Writes a set, whole or not at all. */
  static void write(Path path, ReferenceSet set) throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    String text = isTable(path) ? toCsv(set) : toJson(set);
    ReferenceSet again = isTable(path) ? ofCsv(file, text) : ofJson(file, text);
    if (!toJson(again).equals(toJson(set))) {
      throw new WrongFileException(
          file, "", "would not read back as the same set; look for odd spaces in its names");
    }
    Main.write(path, text);
  }

  private static boolean isTable(Path path) {
    return path.toString().toLowerCase(Locale.ROOT).endsWith(".csv");
  }

  static ReferenceSet ofJson(String file, String text) throws WrongFileException {
    Field root = Field.ofText(file, text);
    String name = root.field("set", "the name of the set").text();
    List<PlugProfile> profiles = new ArrayList<>();
    for (Field item : root.field("profiles", "a list of plug profiles").items()) {
      profiles.add(ProfileFields.profile(item, true));
    }
    List<UniversalSocket> sockets = new ArrayList<>();
    if (root.find("sockets").isPresent()) {
      for (Field item : root.field("sockets", "a list of universal sockets").items()) {
        sockets.add(socket(item));
        item.requireNothingElse();
      }
    }
    root.requireNothingElse();
    return root.build(() -> ReferenceSet.of(name, profiles).withSockets(sockets));
  }

  private static UniversalSocket socket(Field item) throws WrongFileException {
    String name = item.field("name", "what to call the socket").text();
    Set<String> takes = new LinkedHashSet<>(
        item.field("takes", "the ids of the profiles it takes, two at least").words());
    Source source = ProfileFields.source(item, true, Basis.FROM_MEMORY);
    return item.build(() -> new UniversalSocket(name, takes, source));
  }

  static String toJson(ReferenceSet set) {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("set", set.name());
    ArrayNode profiles = root.putArray("profiles");
    for (PlugProfile profile : set.profiles()) {
      ObjectNode item = profiles.addObject();
      ProfileFields.headOf(profile).forEach(item::put);
      if (profile.provenance().kind() == Provenance.Kind.USER_MEASURED) {
        item.put("pieces", profile.provenance().pieces());
      }
      if (!profile.aliases().isEmpty()) {
        profile.aliases().forEach(item.putArray("letters")::add);
      }
      if (ProfileFields.needsConfirming(profile)) {
        item.put("confirmed", true);
      }
      ObjectNode sizes = item.putObject("dimensions");
      profile.dimensions().forEach((dimension, spread) -> {
        ObjectNode size = sizes.putObject(dimension.label());
        if (spread instanceof PartSpread.Sample sample) {
          size.put("count", sample.pieces());
        }
        ProfileFields.fieldsOf(spread).forEach(size::put);
      });
    }
    if (!set.sockets().isEmpty()) {
      ArrayNode sockets = root.putArray("sockets");
      for (UniversalSocket socket : set.sockets()) {
        ObjectNode item = sockets.addObject().put("name", socket.name());
        socket.profileIds().forEach(item.putArray("takes")::add);
        item.put("source", socket.source().citation());
        item.put("basis", socket.source().basis().label());
      }
    }
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
    try {
      return MAPPER.writer(printer).writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of texts and numbers is always JSON", e);
    }
  }

  static ReferenceSet ofCsv(String file, String text) throws WrongFileException {
    return new Table(file).read(Csv.table(file, text, COLUMNS));
  }

  /** Collects the rows of a table: profiles go on over several rows, one to a dimension. */
  private static final class Table {

    private final String file;
    private final Map<String, Started> started = new LinkedHashMap<>();
    private final List<UniversalSocket> sockets = new ArrayList<>();
    private String name = "";

    Table(String file) {
      this.file = file;
    }

    ReferenceSet read(List<Map<String, String>> rows) throws WrongFileException {
      for (int i = 0; i < rows.size(); i++) {
        if (!rows.get(i).isEmpty()) {
          add(Field.ofRow(file, i + 2, rows.get(i)), rows.get(i));
        }
      }
      if (name.isEmpty()) {
        throw new WrongFileException(
            file, "", "has no name; add a row with set under record and the name under name");
      }
      List<PlugProfile> profiles = new ArrayList<>();
      for (Started profile : started.values()) {
        profiles.add(profile.row.build(profile.builder::build));
      }
      try {
        return ReferenceSet.of(name, profiles).withSockets(sockets);
      } catch (IllegalArgumentException e) {
        throw new WrongFileException(file, "", String.valueOf(e.getMessage()));
      }
    }

    private void add(Field row, Map<String, String> cells) throws WrongFileException {
      String record = row.field("record", String.join(", ", RECORDS)).oneOf(RECORDS, word -> word);
      switch (record) {
        case "set" -> {
          Field found = row.field("name", "the name of the set");
          if (!name.isEmpty()) {
            throw found.wrong("is a second name of the set; keep one row with set under record");
          }
          name = found.text();
        }
        case "socket" -> sockets.add(socket(row));
        default -> profile(row, cells);
      }
      row.requireNothingElse();
    }

    private void profile(Field row, Map<String, String> cells) throws WrongFileException {
      String id = row.field("id", "the short name of a profile").text();
      Started profile = started.get(id);
      if (profile == null) {
        profile = new Started(row, cells, ProfileFields.head(row, true), new HashSet<>());
        started.put(id, profile);
      } else {
        sameAsBefore(row, id, profile);
      }
      Field label = row.field("dimension", "such as tip diameter");
      Dimension dimension = ProfileFields.dimension(label, label.text());
      if (!profile.known.add(dimension)) {
        throw label.wrong("\"" + label.text() + "\" stands twice for " + id + "; leave one out");
      }
      profile.builder.dimension(dimension, ProfileFields.spread(row));
    }

    /** Further rows of a profile may leave out what the first said, and may not say anything else. */
    private static void sameAsBefore(Field row, String id, Started profile)
        throws WrongFileException {
      for (String column : OF_PROFILE) {
        Optional<Field> again = row.find(column);
        String first = profile.cells.getOrDefault(column, "");
        if (again.isPresent() && !again.get().text().equals(first)) {
          throw again
              .get()
              .wrong("was \"" + again.get().text() + "\", but the first row of " + id
                  + " says " + (first.isEmpty() ? "nothing" : "\"" + first + "\"")
                  + "; type the same, or leave the cell empty");
        }
      }
    }

    /** A profile whose first row was read. */
    private record Started(
        Field row, Map<String, String> cells, PlugProfile.Builder builder, Set<Dimension> known) {}
  }

  static String toCsv(ReferenceSet set) {
    StringBuilder out = new StringBuilder(Csv.line(COLUMNS));
    row(out, Map.of("record", "set", "name", set.name()));
    for (PlugProfile profile : set.profiles()) {
      Map<String, String> cells = new HashMap<>(ProfileFields.headOf(profile));
      if (profile.provenance().kind() == Provenance.Kind.USER_MEASURED) {
        cells.put("pieces", String.valueOf(profile.provenance().pieces()));
      }
      cells.put("letters", Csv.joined(profile.aliases()));
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
        row(out, cells);
        cells.clear(); // the first row says the rest
      });
    }
    for (UniversalSocket socket : set.sockets()) {
      row(
          out,
          Map.of(
              "record", "socket",
              "name", socket.name(),
              "takes", Csv.joined(socket.profileIds()),
              "source", socket.source().citation(),
              "basis", socket.source().basis().label()));
    }
    return out.toString();
  }

  private static void row(StringBuilder out, Map<String, String> cells) {
    out.append(
        Csv.line(COLUMNS.stream().map(column -> cells.getOrDefault(column, "")).toList()));
  }
}
