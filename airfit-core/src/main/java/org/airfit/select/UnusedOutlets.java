package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.airfit.joint.End;

/**
 * The outlets of a splitter that no line uses: air escapes from them until they are closed.
 *
 * @param splitter what the splitter is called, with how many there are of it; of several splitters with its place
 * @param ends the ends of these outlets, each kind once
 */
record UnusedOutlets(String splitter, List<String> ends) {

  /** Those of every splitter of an assembly; none where others use the rest of them. */
  static List<UnusedOutlets> of(Assembly assembly) {
    List<UnusedOutlets> all = new ArrayList<>();
    for (Placed each : assembly.placed()) {
      if (each.part() instanceof Part.Splitter splitter
          && each.position().others().isEmpty()) {
        int used = assembly.stretch(each.position()).outlets();
        List<End> outlets = splitter.outlets();
        int from = each.position().outlet();
        Set<String> open = new LinkedHashSet<>();
        for (int i = 0; i < outlets.size(); i++) {
          if (i < from || i >= from + used) {
            open.add(outlets.get(i).label());
          }
        }
        if (!open.isEmpty()) {
          all.add(new UnusedOutlets(called(assembly, each), List.copyOf(open)));
        }
      }
    }
    return all;
  }

  /**
   * The splitters from which others take air and of which the lines take every outlet, so that none is left for them:
   * what each is called.
   */
  static List<String> noneForOthers(Assembly assembly) {
    List<String> none = new ArrayList<>();
    for (Placed each : assembly.placed()) {
      if (each.part() instanceof Part.Splitter splitter
          && each.position().others().isPresent()
          && assembly.stretch(each.position()).outlets() >= splitter.outlets().size()) {
        none.add(called(assembly, each));
      }
    }
    return none;
  }

  private static String called(Assembly assembly, Placed splitter) {
    boolean isOnly = assembly.placed().stream()
            .filter(each -> each.part() instanceof Part.Splitter)
            .count()
        == 1L;
    int count = splitter.position().count();
    return (count == 1 ? "" : "each of the " + count + " ")
        + splitter.part().name()
        + (isOnly ? "" : " (" + splitter.position().name() + ")");
  }

  /** Which outlets, in words. */
  String inWords() {
    return "the outlets of " + splitter + " that no line uses";
  }
}
