package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadFamily;
import org.junit.jupiter.api.Test;

/**
 * The catalogue of standard shapes, held against its rules said once more, pair by pair of ends: four sizes within a
 * family, one size between families, two sizes between a hose or tube and a thread, between tubes half the diameter.
 */
class StandardAdapterTest {

  private static final Set<ThreadFamily> WITH_FITTINGS =
      Set.of(ThreadFamily.NPT, ThreadFamily.NPTF, ThreadFamily.BSPT, ThreadFamily.BSPP);

  /** Names of hoses in ISO 1307 and the trade, as they are typed, with the pipe size nearest to each by hand. */
  private static final String[][] HOSES = {
    {"4 mm", "1/8"}, {"6.3 mm", "1/4"}, {"8 mm", "3/8"}, {"10 mm", "3/8"}, {"12.5 mm", "1/2"},
    {"16 mm", "3/4"}, {"19 mm", "3/4"}, {"20 mm", "3/4"}, {"25 mm", "1"}, {"51 mm", "2"},
    {"1/4 in", "1/4"}, {"5/16 in", "1/4"}, {"3/8 in", "3/8"}, {"1/2 in", "1/2"}, {"5/8 in", "1/2"},
    {"3/4 in", "3/4"}, {"1 in", "1"}, {"2 in", "2"}
  };

  /** Tubes as they are sold, with the pipe size nearest to each by hand. */
  private static final String[][] TUBES = {
    {"1/8 in", "1/8"},
    {"5/32 in", "1/8"},
    {"3/16 in", "1/8"},
    {"1/4 in", "1/4"},
    {"5/16 in", "1/4"},
    {"3/8 in", "3/8"},
    {"1/2 in", "1/2"},
    {"3 mm", "1/8"},
    {"4 mm", "1/8"},
    {"6 mm", "1/4"},
    {"8 mm", "3/8"},
    {"10 mm", "3/8"},
    {"12 mm", "1/2"},
    {"14 mm", "1/2"},
    {"16 mm", "3/4"}
  };

  /** Two names of one hose: an inch name and the millimetres that ISO 1307 has for it. */
  private static final Set<String> ONE_HOSE = Set.of(
      "1/4 in 6.3 mm",
      "5/16 in 8 mm",
      "3/8 in 10 mm",
      "1/2 in 12.5 mm",
      "5/8 in 16 mm",
      "3/4 in 19 mm",
      "1 in 25 mm",
      "2 in 51 mm");

  private record Sized(End end, String name, NominalThreadSize size) {}

  private static List<Sized> ends() {
    List<Sized> ends = new ArrayList<>();
    for (ThreadFamily family : ThreadFamily.values()) {
      for (NominalThreadSize size : family.sizes()) {
        for (Gender gender : Gender.values()) {
          if (family.has(gender)) {
            ends.add(new Sized(new End.Threaded(family, size, gender), size.label(), size));
          }
        }
      }
    }
    for (String[] hose : HOSES) {
      NominalThreadSize size = NominalThreadSize.parse(hose[1]);
      ends.add(new Sized(new End.Barb(HoseBore.parse(hose[0])), hose[0], size));
      ends.add(new Sized(new End.HoseEnd(HoseBore.parse(hose[0])), hose[0], size));
    }
    for (String[] tube : TUBES) {
      NominalThreadSize size = NominalThreadSize.parse(tube[1]);
      ends.add(new Sized(new End.PushIn(Length.parse(tube[0])), tube[0], size));
      ends.add(new Sized(new End.TubeEnd(Length.parse(tube[0])), tube[0], size));
    }
    return ends;
  }

  private static int steps(Sized one, Sized other) {
    return one.size().compareTo(other.size());
  }

  /** The shape that has these two ends, named in this order; the larger first. */
  private static Optional<AdapterShape> shape(Sized one, Sized other) {
    int steps = steps(one, other);
    if (one.end() instanceof End.Threaded a && other.end() instanceof End.Threaded b) {
      return ofThreads(a, b, steps);
    }
    boolean nearThread = other.end() instanceof End.Threaded b
        && WITH_FITTINGS.contains(b.family())
        && Math.abs(steps) <= 2;
    boolean same = one.end().equals(other.end());
    if (one.end() instanceof End.Barb a) {
      if (nearThread || same) {
        return Optional.of(nearThread ? AdapterShape.HOSE_TAIL : AdapterShape.HOSE_JOINER);
      }
      return other.end() instanceof End.Barb b
              && a.bore().compareTo(b.bore()) > 0
              && steps <= 2
              && !ONE_HOSE.contains(one.name() + " " + other.name())
              && !ONE_HOSE.contains(other.name() + " " + one.name())
          ? Optional.of(AdapterShape.REDUCING_HOSE_JOINER)
          : Optional.empty();
    }
    if (one.end() instanceof End.PushIn a) {
      if (nearThread || same) {
        return Optional.of(
            nearThread ? AdapterShape.PUSH_IN_CONNECTOR : AdapterShape.PUSH_IN_UNION);
      }
      double ratio = other.end() instanceof End.PushIn b
          ? a.outside().millimetres() / b.outside().millimetres()
          : 0.0;
      return ratio > 1.0 && ratio <= 2.0 + 1.0e-9
          ? Optional.of(AdapterShape.REDUCING_PUSH_IN_UNION)
          : Optional.empty();
    }
    if (!same) {
      return Optional.empty();
    }
    return one.end() instanceof End.HoseEnd
        ? Optional.of(AdapterShape.HOSE_LENGTH)
        : Optional.of(AdapterShape.TUBE_LENGTH);
  }

  private static Optional<AdapterShape> ofThreads(End.Threaded a, End.Threaded b, int steps) {
    String genders = a.gender().label().charAt(0) + "" + b.gender().label().charAt(0);
    if (a.family() == b.family()) {
      boolean swivel = a.family() == ThreadFamily.NPSM && genders.equals("ff");
      if (!(WITH_FITTINGS.contains(a.family()) || swivel) || steps < 0 || steps > 4) {
        return Optional.empty();
      }
      return switch (genders) {
        case "mm" -> Optional.of(steps == 0 ? AdapterShape.NIPPLE : AdapterShape.REDUCING_NIPPLE);
        case "ff" ->
          Optional.of(steps == 0 ? AdapterShape.FEMALE_COUPLING : AdapterShape.REDUCING_COUPLING);
        case "mf" -> steps == 0 ? Optional.empty() : Optional.of(AdapterShape.BUSHING);
        default -> steps == 0 ? Optional.empty() : Optional.of(AdapterShape.REDUCER);
      };
    }
    boolean ofNpsm = a.family() == ThreadFamily.NPSM
        && b.family() == ThreadFamily.NPT
        && a.gender() == Gender.FEMALE;
    Set<ThreadFamily> families = Set.of(a.family(), b.family());
    boolean dryseal = families.equals(Set.of(ThreadFamily.NPT, ThreadFamily.NPTF));
    if (Math.abs(steps) > 1) {
      return Optional.empty();
    }
    if (ofNpsm) {
      return Optional.of(AdapterShape.SWIVEL_ADAPTER);
    }
    if (!WITH_FITTINGS.containsAll(families) || dryseal) {
      return Optional.empty();
    }
    return switch (genders) {
      case "mm" -> Optional.of(AdapterShape.ADAPTER_NIPPLE);
      case "ff" -> Optional.of(AdapterShape.ADAPTER_COUPLING);
      default -> Optional.of(AdapterShape.ADAPTER);
    };
  }

  private static String key(AdapterShape shape, End one, End other) {
    String first = one.label();
    String second = other.label();
    return shape.label()
        + (first.compareTo(second) <= 0 ? " " + first + " " + second : " " + second + " " + first);
  }

  @Test
  void the_catalogue_holds_what_its_rules_say_and_nothing_else() {
    Set<String> wanted = new TreeSet<>();
    List<Sized> ends = ends();
    for (Sized one : ends) {
      for (Sized other : ends) {
        shape(one, other).ifPresent(shape -> wanted.add(key(shape, one.end(), other.end())));
      }
    }
    assertThat(StandardAdapter.make()).isEqualTo(StandardAdapter.all());
    List<StandardAdapter> made = StandardAdapter.make().stream()
        .filter(adapter -> !isOfForms(adapter.one()) && !isOfForms(adapter.other()))
        .toList();
    Set<String> held = new TreeSet<>();
    made.forEach(adapter -> held.add(key(adapter.shape(), adapter.one(), adapter.other())));
    assertThat(held).isEqualTo(wanted).hasSameSizeAs(made);
  }

  /** Flares, ports and claws have a test of their own. */
  private static boolean isOfForms(End end) {
    return end instanceof End.Formed || end instanceof End.Claw;
  }

  private static StandardAdapter named(String name) {
    return StandardAdapter.make().stream()
        .filter(adapter -> adapter.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void a_piece_of_hose_or_tube_is_a_length_and_every_other_piece_names_both_ends() {
    assertThat(named("length of 3/8 in hose").shape()).isEqualTo(AdapterShape.HOSE_LENGTH);
    assertThat(named("length of 8 mm tube").shape()).isEqualTo(AdapterShape.TUBE_LENGTH);
    assertThat(named("push-in union 8 mm push-in × 8 mm push-in").one())
        .isEqualTo(End.parse("8 mm push-in"));
  }

  /** What the search weighs: sizes, then families, then standards; a piece on which another sits outside counts one. */
  @Test
  void a_piece_costs_the_sizes_families_and_standards_it_changes() {
    assertThat(cost("nipple 1/4 NPT male × 1/4 NPT male")).isEqualTo(1);
    assertThat(cost("female coupling 1/4 NPT female × 1/4 NPT female")).isEqualTo(1);
    assertThat(cost("reducing nipple 1/2 NPT male × 1/4 NPT male")).isEqualTo(3);
    assertThat(cost("reducing bushing 1/2 NPT male × 1/4 NPT female")).isEqualTo(2);
    assertThat(cost("female × male reducer 1/2 NPT female × 1/4 NPT male")).isEqualTo(2);
    assertThat(cost("adapter Rc 1/4 female × G 1/4 male")).isEqualTo(100);
    assertThat(cost("adapter Rc 1/4 female × G 3/8 male")).isEqualTo(101);
    assertThat(cost("adapter 1/4 NPT male × G 1/4 female")).isEqualTo(10_100);
    assertThat(cost("adapter nipple 1/4 NPT male × G 3/8 male")).isEqualTo(10_102);
    assertThat(cost("swivel adapter 1/4 NPSM female × 1/4 NPT male")).isEqualTo(100);
    assertThat(cost("hose tail 3/8 in barb × 3/8 NPT male")).isZero();
    assertThat(cost("hose tail 3/8 in barb × 1/2 NPT male")).isEqualTo(1);
    assertThat(cost("push-in connector 8 mm push-in × 1/4 NPT male")).isEqualTo(1);
    assertThat(cost("length of 8 mm tube")).isZero();
  }

  private static int cost(String name) {
    return AdapterSearch.cost(named(name));
  }

  @Test
  void a_joint_costs_nothing_under_one_name_a_family_under_two_and_twice_that_on_a_seat() {
    assertThat(joint("1/4 NPT male", "1/4 NPT female")).isZero();
    assertThat(joint("1/4 NPT male", "1/4 NPTF female")).isEqualTo(100);
    assertThat(joint("R 1/4 male", "Rp 1/4 female")).isEqualTo(100);
    assertThat(joint("1/4 NPT male", "1/4 NPSM female")).isEqualTo(200);
    assertThat(joint("1/4 NPSM female", "1/4 NPT male")).isEqualTo(200);
    assertThat(joint("1/4 NPSM male", "1/4 NPSM female")).isZero();
    assertThat(joint("3/8 in hose", "3/8 in barb")).isZero();
    assertThat(joint("10 mm hose", "3/8 in barb")).isEqualTo(100);
    assertThat(joint("3/8 in barb", "10 mm hose")).isEqualTo(100);
    assertThat(joint("8 mm tube", "8 mm push-in")).isZero();
  }

  private static int joint(String one, String other) {
    return AdapterSearch.joint(End.parse(one), End.parse(other));
  }

  /** A way of one or two pieces with what it costs, and the places of its pieces in the catalogue. */
  private record Way(int cost, List<Integer> places) {

    boolean isBefore(Way other) {
      if (cost != other.cost) {
        return cost < other.cost;
      }
      for (int i = 0; i < places.size(); i++) {
        int order = places.get(i).compareTo(other.places.get(i));
        if (order != 0) {
          return order < 0;
        }
      }
      return false;
    }
  }

  /** Every way of one piece more, gone through without a search. */
  private static void longer(End open, Way way, int pieces, End to, List<Way> found) {
    if (pieces == 0) {
      if (Mating.isSound(open, to)) {
        found.add(new Way(way.cost() + AdapterSearch.joint(open, to), way.places()));
      }
      return;
    }
    List<StandardAdapter> all = StandardAdapter.all();
    for (int i = 0; i < all.size(); i++) {
      StandardAdapter adapter = all.get(i);
      for (boolean turned : new boolean[] {false, true}) {
        End near = turned ? adapter.other() : adapter.one();
        if (Mating.isSound(open, near)) {
          List<Integer> places = new ArrayList<>(way.places());
          places.add(i);
          int cost = way.cost() + AdapterSearch.joint(open, near) + AdapterSearch.cost(adapter);
          longer(
              turned ? adapter.one() : adapter.other(),
              new Way(cost, places),
              pieces - 1,
              to,
              found);
        }
      }
    }
  }

  @Test
  void of_all_ways_with_as_many_pieces_the_search_takes_the_cheapest_and_of_those_the_first() {
    String[][] pairs = {
      {"1/4 NPT female", "G 3/8 female", "1"},
      {"1/2 NPT male", "10 mm hose", "1"},
      {"10 mm hose", "3/8 in hose", "1"},
      {"1/4 NPTF male", "1/4 NPTF male", "1"},
      {"1/4 NPSM male", "G 1/4 male", "2"},
      {"1/2 in hose", "8 mm tube", "2"},
      {"1/4 NPT female", "6 mm push-in", "2"}
    };
    for (String[] pair : pairs) {
      End from = End.parse(pair[0]);
      End to = End.parse(pair[1]);
      assertThat(from.label()).as("the end it starts at").isLessThanOrEqualTo(to.label());
      int pieces = Integer.parseInt(pair[2]);
      List<Way> found = new ArrayList<>();
      longer(from, new Way(0, List.of()), pieces, to, found);
      Way best = found.get(0);
      for (Way way : found) {
        best = way.isBefore(best) ? way : best;
      }
      assertThat(Mating.of(from, to).between())
          .as("%s and %s, one of %s ways", from, to, found.size())
          .isEqualTo(best.places().stream().map(StandardAdapter.all()::get).toList());
    }
  }
}
