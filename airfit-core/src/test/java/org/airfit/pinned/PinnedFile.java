package org.airfit.pinned;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.airfit.Rows;

/**
 * The pinned answers as they lie in a folder: answers.csv with a row for each question, changes.csv with the entry of
 * the change log for each change of answers, and seal.txt, a hash of both, so that an answer edited by hand is noticed.
 *
 * @param pins the rows
 * @param entries what the change log says of change 1, 2, …, as much of it as tells it from others
 */
record PinnedFile(List<Pinned> pins, List<String> entries) {

  /**
   * A pinned answer.
   *
   * @param pin the question and its answer
   * @param change the change that gave this answer, 1 for the first of {@link #entries()}; 0 if it is as first pinned
   */
  record Pinned(Pin pin, int change) {}

  /** The answer of a question that is asked no more; its row stays. */
  static final String NO_MORE = "asked no more";

  private static final String ANSWERS = "answers.csv";
  private static final String CHANGES = "changes.csv";
  private static final String SEAL = "seal.txt";

  /** Shorter texts stand in the change log by chance. */
  private static final int LEAST_ENTRY = 30;

  PinnedFile {
    pins = List.copyOf(pins);
    entries = List.copyOf(entries);
  }

  /** Reads a folder; one without files holds no answers. */
  static PinnedFile in(Path folder) throws IOException {
    if (!Files.exists(folder.resolve(ANSWERS))) {
      return new PinnedFile(List.of(), List.of());
    }
    String answers = Files.readString(folder.resolve(ANSWERS));
    String changes = Files.readString(folder.resolve(CHANGES));
    if (!Files.readString(folder.resolve(SEAL)).strip().equals(Pin.hash(answers + changes))) {
      throw new IllegalStateException(
          "the pinned answers were edited by hand, or two changes were merged: take one side as it"
              + " was and run .ci/pinned renew with the entry of the other");
    }
    List<Pinned> pins = new ArrayList<>();
    for (List<String> row : rows(answers)) {
      pins.add(new Pinned(
          new Pin(row.get(1), row.get(2), row.get(3), row.get(4)), Integer.parseInt(row.get(5))));
    }
    return new PinnedFile(pins, rows(changes).stream().map(row -> row.get(1)).toList());
  }

  private static List<List<String>> rows(String csv) {
    List<List<String>> all = Rows.parse(csv);
    return all.subList(1, all.size());
  }

  /** What differs from these answers, a line each; empty if nothing does. */
  List<String> changes(List<Pin> now) {
    Map<String, Pin> asked = byQuestion(now);
    Map<String, Pin> pinned = new HashMap<>();
    List<String> changed = new ArrayList<>();
    for (Pinned row : pins) {
      Pin pin = row.pin();
      pinned.put(pin.question(), pin);
      Pin answer = asked.get(pin.question());
      if (answer == null) {
        if (!pin.answer().equals(NO_MORE)) {
          changed.add(pin.id() + " is asked no more: " + pin.question());
        }
      } else if (!pin.isAnsweredBy(answer)) {
        changed.add(pin.id() + " was " + pin.answer() + ", is " + answer.answer() + " "
            + answer.unit() + ": " + pin.question());
      }
    }
    for (Pin pin : now) {
      if (!pinned.containsKey(pin.question())) {
        changed.add(pin.id() + " is not pinned yet: " + pin.question());
      }
    }
    return changed;
  }

  /**
   * The answers of now. A new question is pinned; an answer that changed and a question that is asked no more need an
   * entry.
   *
   * @param entry the beginning of an entry under "Results changed" of the newest version, no change's before; "" for
   *     none
   * @throws IllegalStateException if answers changed and the entry is none
   */
  PinnedFile renewed(List<Pin> now, String entry, String changeLog) {
    Map<String, Pin> asked = new LinkedHashMap<>(byQuestion(now));
    List<Pinned> renewed = new ArrayList<>();
    int change = entries.size() + 1;
    boolean isChanged = false;
    for (Pinned row : pins) {
      Pin answer = asked.remove(row.pin().question());
      if (answer == null) {
        answer = new Pin(row.pin().area(), row.pin().question(), NO_MORE, Pin.WORD);
      }
      if (row.pin().isAnsweredBy(answer)) {
        renewed.add(row);
      } else {
        isChanged = true;
        renewed.add(new Pinned(answer, change));
      }
    }
    asked.values().forEach(pin -> renewed.add(new Pinned(pin, 0)));
    if (!isChanged) {
      return new PinnedFile(renewed, entries);
    }
    List<String> more = new ArrayList<>(entries);
    more.add(oneLine(entry));
    PinnedFile file = new PinnedFile(renewed, more);
    file.requireEntriesIn(changeLog);
    if (!resultsChanged(newestVersion(changeLog)).contains(oneLine(entry))) {
      throw new IllegalStateException("the entry \"" + oneLine(entry)
          + "\" tells of an earlier version; write one for the version that comes");
    }
    return file;
  }

  /** The first section of the change log, of the version that comes. */
  private static String newestVersion(String changeLog) {
    int first = changeLog.indexOf("## ");
    int next = changeLog.indexOf("\n## ", first + 1);
    return next < 0 ? changeLog : changeLog.substring(0, next + 1);
  }

  /**
   * Checks that each change is told to the users.
   *
   * @throws IllegalStateException if one is not
   */
  void requireEntriesIn(String changeLog) {
    String told = resultsChanged(changeLog);
    for (int i = 0; i < entries.size(); i++) {
      String entry = entries.get(i);
      if (entry.length() < LEAST_ENTRY || !told.contains(entry)) {
        throw new IllegalStateException(
            "answers changed, and CHANGELOG.md has no entry under \"Results"
                + " changed\" that begins with \"" + entry + "\"; give " + LEAST_ENTRY
                + " characters of one at least: .ci/pinned renew \"ENTRY\"");
      }
      if (entries.indexOf(entry) < i) {
        throw new IllegalStateException("the entry \"" + entry
            + "\" tells of an earlier change; write one of" + " this change");
      }
    }
    for (Pinned row : pins) {
      Objects.checkIndex(row.change(), entries.size() + 1);
    }
  }

  /**
   * Checks that nothing which was pinned earlier is gone or has changed without an entry.
   *
   * @throws IllegalStateException if something is
   */
  void requireAllOf(PinnedFile earlier) {
    Map<String, Pinned> now =
        pins.stream().collect(Collectors.toMap(row -> row.pin().question(), row -> row));
    for (Pinned then : earlier.pins) {
      Pinned row = now.get(then.pin().question());
      if (row == null) {
        throw new IllegalStateException("a pinned answer is gone: " + then.pin().question());
      }
      if (!then.pin().isAnsweredBy(row.pin()) && row.change() <= earlier.entries.size()) {
        throw new IllegalStateException(
            "a pinned answer changed without an entry: " + then.pin().question());
      }
    }
  }

  void writeTo(Path folder) throws IOException {
    StringBuilder answers = new StringBuilder("id,area,question,answer,unit,change\n");
    for (Pinned row : pins) {
      Pin pin = row.pin();
      answers
          .append(String.join(
              ",",
              pin.id(),
              pin.area(),
              cell(pin.question()),
              cell(pin.answer()),
              cell(pin.unit()),
              String.valueOf(row.change())))
          .append('\n');
    }
    StringBuilder changes = new StringBuilder("change,entry\n");
    for (int i = 0; i < entries.size(); i++) {
      changes.append(i + 1).append(',').append(cell(entries.get(i))).append('\n');
    }
    Files.createDirectories(folder);
    Files.writeString(folder.resolve(ANSWERS), answers);
    Files.writeString(folder.resolve(CHANGES), changes);
    Files.writeString(folder.resolve(SEAL), Pin.hash(answers.toString() + changes) + "\n");
  }

  private static Map<String, Pin> byQuestion(List<Pin> pins) {
    return pins.stream()
        .collect(
            Collectors.toMap(Pin::question, pin -> pin, (one, two) -> one, LinkedHashMap::new));
  }

  /** All that stands under "Results changed", of every version, in one line. */
  private static String resultsChanged(String changeLog) {
    StringBuilder told = new StringBuilder();
    boolean isTold = false;
    for (String line : changeLog.lines().toList()) {
      if (line.startsWith("## ") || line.startsWith("### ")) {
        isTold = line.strip().equals("### Results changed");
      } else if (isTold) {
        told.append(line).append(' ');
      }
    }
    return oneLine(told.toString());
  }

  private static String oneLine(String text) {
    return text.strip().replaceAll("\\s+", " ");
  }

  private static String cell(String text) {
    return text.contains(",") || text.contains("\"")
        ? '"' + text.replace("\"", "\"\"") + '"'
        : text;
  }
}
