package org.airfit.select;

import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of a layout: what stands in front of all lines, or one line, to its tool or to its splitter. Each is
 * followed by the lines behind its splitter, one after another with all that is behind it.
 *
 * @param line which line it is, counted from 0 in that order; {@link #SHARED} in front of all lines
 * @param before the line at whose splitter it begins; {@link #SHARED} at the one in front of all lines
 * @param place which of the lines of that splitter it is, counted from 0
 * @param slots its slots in the order the air goes
 * @param lines the lines behind the splitter at its end; none where it ends at a tool
 * @param count how many there are of it, counted through all lines alike
 * @param firstTool the first tool behind it, tools alike counted as one, from 0
 * @param tools how many tools are behind it, tools alike counted as one
 */
record Stretch(
    int line,
    int before,
    int place,
    List<Slot> slots,
    List<ToolLine> lines,
    int count,
    int firstTool,
    int tools) {

  /** The line of what stands in front of all lines, or where there are none. */
  static final int SHARED = -1;

  /** The stretches of a layout. */
  static List<Stretch> of(List<Slot> slots, List<ToolLine> lines) {
    List<Stretch> all = new ArrayList<>();
    add(all, new Stretch(SHARED, SHARED, 0, slots, lines, /* count= */ 1, 0, tools(lines)));
    return List.copyOf(all);
  }

  private static void add(List<Stretch> all, Stretch next) {
    all.add(next);
    int tool = next.firstTool;
    for (int i = 0; i < next.lines.size(); i++) {
      ToolLine line = next.lines.get(i);
      int tools = line.isToTool() ? 1 : tools(line.lines());
      add(
          all,
          new Stretch(
              all.size() - 1,
              next.line,
              i,
              line.slots(),
              line.lines(),
              next.count * line.count(),
              tool,
              tools));
      tool += tools;
    }
  }

  /** How many tools lines lead to, tools alike counted as one; one where there is no line. */
  private static int tools(List<ToolLine> lines) {
    return lines.isEmpty()
        ? 1
        : lines.stream().mapToInt(line -> tools(line.lines())).sum();
  }

  /** Whether it ends at a tool. */
  boolean isToTool() {
    return lines.isEmpty();
  }

  /** Whether a tool is behind it, counted as {@link #firstTool}. */
  boolean isOnTheWayTo(int tool) {
    return tool >= firstTool && tool < firstTool + tools;
  }

  /** The slot at its end. */
  Slot last() {
    return slots.get(slots.size() - 1);
  }

  /** At which of the outlets that lines take from a splitter one of its lines begins, the first of those alike. */
  int outlet(int line) {
    return lines.subList(0, line).stream().mapToInt(ToolLine::count).sum();
  }

  /** How many outlets of the splitter its lines take. */
  int outlets() {
    return outlet(lines.size());
  }
}
