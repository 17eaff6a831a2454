package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.joint.StandardAdapter;
import org.airfit.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * Two ends that are put together: of a joint as it stands, or with the standard adapters that it lacks.
 *
 * @param where the joint it belongs to, such as "outlet to socket"
 * @param mating the two ends, the one towards the supply first
 * @param upstream the part whose end the first is; null of the outlet and of an adapter that no catalogue part is
 * @param downstream the part whose end the other is; null of the tool and of an adapter that no catalogue part is
 */
record Meeting(
    String where,
    Mating mating,
    @Nullable Part upstream,
    @Nullable Part downstream) {

  /** Every pair of an assembly, from the outlet to the tool, in every line; none of a joint that nothing joins. */
  static List<Meeting> of(Assembly a) {
    List<Meeting> all = new ArrayList<>();
    for (Assembly.Between each : a.between()) {
      Part before = each.before() == null ? null : each.before().part();
      Part behind = each.behind() == null ? null : each.behind().part();
      for (int i = 0; i < each.count(); i++) {
        meet(all, each.joint(), before, behind);
      }
    }
    return List.copyOf(all);
  }

  private static void meet(
      List<Meeting> all, Joint joint, @Nullable Part before, @Nullable Part behind) {
    List<Mating> matings = joint.isSound() ? joint.matings() : withStandardAdapters(joint);
    List<? extends Part> between = joint.isSound() ? joint.adapters() : List.of();
    for (int i = 0; i < matings.size(); i++) {
      Part from = i == 0 ? before : between.isEmpty() ? null : between.get(i - 1);
      Part to = i == matings.size() - 1 ? behind : between.isEmpty() ? null : between.get(i);
      all.add(new Meeting(joint.where(), matings.get(i), from, to));
    }
  }

  /** The standard adapters that a joint lacks, from the supply on; none where it is joined or nothing standard does. */
  static List<StandardAdapter> lacking(Joint joint) {
    return joint.isSound() ? List.of() : joint.matings().get(0).between();
  }

  private static List<Mating> withStandardAdapters(Joint joint) {
    List<StandardAdapter> adapters = lacking(joint);
    List<Mating> matings = new ArrayList<>();
    if (!adapters.isEmpty()) {
      put(matings, joint.upstream(), adapters, joint.downstream());
    }
    return matings;
  }

  /** Each adapter is turned so that it goes on; both ways may do, and then the first is taken. */
  private static boolean put(
      List<Mating> matings, End open, List<StandardAdapter> adapters, End goal) {
    if (adapters.isEmpty()) {
      matings.add(Mating.of(open, goal));
      return Mating.isSound(open, goal);
    }
    StandardAdapter next = adapters.get(0);
    List<StandardAdapter> others = adapters.subList(1, adapters.size());
    int before = matings.size();
    if (Mating.isSound(open, next.one())) {
      matings.add(Mating.of(open, next.one()));
      if (put(matings, next.other(), others, goal)) {
        return true;
      }
    }
    matings.subList(before, matings.size()).clear();
    matings.add(Mating.of(open, next.other()));
    return Mating.isSound(open, next.other()) && put(matings, next.one(), others, goal);
  }

  /** The hose of this pair with what it measures outside, if that is known. */
  Optional<Length> hoseOutside() {
    Part hose = mating.one() instanceof End.HoseEnd ? upstream : downstream;
    return Optional.ofNullable(hose).flatMap(part -> part.facts().outsideDiameter());
  }

  /** What the hose of this pair is called. */
  String hoseName() {
    Part hose = mating.one() instanceof End.HoseEnd ? upstream : downstream;
    End end = mating.one() instanceof End.HoseEnd ? mating.one() : mating.other();
    return hose == null ? end.label() : hose.name();
  }
}
