package org.airfit.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What to change in a job file of the first form, which had no number and is no longer read. */
final class FirstForm {

  private static final List<String> MOVED = List.of("pipes", "outlet", "reach", "stays");

  private FirstForm() {}

  /** The changes that this file needs, in one line. */
  static String whatToChange(Field root) throws WrongFileException {
    List<String> changes = new ArrayList<>();
    changes.add("put \"" + JobFile.VERSION + "\": " + JobFile.FORM + " in front");
    List<String> moved = new ArrayList<>(MOVED);
    moved.retainAll(root.names());
    Optional<Field> supply = root.find("supply").filter(Field::isObject);
    boolean isRegulated = supply.isPresent()
        && (supply.get().find("regulated").isPresent()
            || supply.get().find("ifRegulatorFails").isPresent());
    if (!moved.isEmpty() || isRegulated) {
      changes.add("put "
          + (moved.isEmpty() ? "the regulator" : String.join(", ", moved))
          + " into one list in the order the air goes, \"line\": [" + line(root, supply, isRegulated)
          + "]");
    }
    if (isRegulated) {
      changes.add("let supply.pressure be what stands in front of that regulator, "
          + quoted(supply.get(), "highest", "such as \"8.5 bar(g)\"")
          + ", and leave out supply.regulated, supply.ifRegulatorFails and supply.highest");
    }
    if (supply.isPresent() && supply.get().find("lowest").isPresent()) {
      changes.add("let supply.pressure be cut-in to cut-out, such as \"90 to 110 psig\", and leave"
          + " out supply.lowest");
    }
    return "is no job file of form " + JobFile.FORM + ": " + String.join("; ", changes)
        + ". docs/job-file.md has an example";
  }

  private static String line(Field root, Optional<Field> supply, boolean isRegulated)
      throws WrongFileException {
    List<String> items = new ArrayList<>();
    if (isRegulated) {
      items.add("{\"kind\": \"regulator\", \"set\": "
          + quoted(supply.orElseThrow(), "pressure", "…") + "}");
    }
    if (root.find("pipes").isPresent()) {
      items.add("each pipe with \"kind\": \"pipe\"");
    }
    Optional<Field> stays = root.find("stays").filter(Field::isObject);
    items.add("{\"kind\": \"outlet\", \"end\": " + quoted(root, "outlet", "…") + "}");
    items.add("{\"kind\": \"coupling\"" + there(stays, "outletSocket", "socket") + "}");
    items.add("{\"kind\": \"hose\", \"reach\": " + quoted(root, "reach", "…")
        + there(stays, "hose", "part") + "}");
    items.add("{\"kind\": \"coupling\"" + there(stays, "toolPlug", "plug") + "}");
    return String.join(", ", items);
  }

  private static String there(Optional<Field> stays, String field, String now)
      throws WrongFileException {
    return stays.isPresent() && stays.get().find(field).isPresent()
        ? ", \"" + now + "\": " + quoted(stays.get(), field, "…")
        : "";
  }

  /** What a field says, if it is a text, in quotation marks. */
  private static String quoted(Field object, String field, String otherwise)
      throws WrongFileException {
    Optional<Field> found = object.find(field).filter(Field::isText);
    return found.isPresent() ? "\"" + found.get().text() + "\"" : otherwise;
  }
}
