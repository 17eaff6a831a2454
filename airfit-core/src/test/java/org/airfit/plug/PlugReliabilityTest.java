package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.airfit.ReliabilityTable;
import org.airfit.internal.Digits;
import org.airfit.measure.Instrument;
import org.junit.jupiter.api.Test;

/** How often the judgement about a plug is right, for plugs that {@link PlugWorkshop} draws. */
class PlugReliabilityTest {

  private static final int SCALE = Integer.getInteger("airfit.plugs.scale", 1);
  private static final int PLUGS = 300 * SCALE;

  private static final Set<Dimension> ALL = EnumSet.allOf(Dimension.class);
  private static final Set<Dimension> THREE =
      EnumSet.of(Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.TIP_LENGTH);
  private static final Set<Dimension> EIGHT = EnumSet.complementOf(EnumSet.of(Dimension.BORE));

  /** Draws a plug, of a profile or like it. */
  private interface Draw {
    Map<Dimension, Double> plug(PlugWorkshop workshop, PlugProfile profile);
  }

  private static final class Tally {
    int plugs;
    int identified;
    int wrong;
    int candidates;
    int ambiguous;
    int refused;
    int readings;

    double share(int of) {
      return of / (double) plugs;
    }

    List<String> row(String what) {
      return List.of(
          what,
          Integer.toString(plugs),
          percent(share(identified)),
          percent(share(wrong)),
          percent(share(candidates)),
          percent(share(ambiguous)),
          percent(share(refused)),
          Digits.fixed(readings / (double) plugs, 1));
    }
  }

  private static String percent(double share) {
    return Digits.fixed(100.0 * share, 1) + " %";
  }

  /** Takes the reading that is ranked first, until the plug is identified, all is read, or so many were taken. */
  private static Tally follow(
      long seed,
      int profiles,
      int most,
      Function<ReferenceSet, Identifier> judge,
      Draw draw,
      boolean genuine) {
    return follow(seed, profiles, ALL, most, judge, draw, genuine);
  }

  /** The same by a set that knows some sizes only; the plug is drawn with all. */
  private static Tally follow(
      long seed,
      int profiles,
      Set<Dimension> known,
      int most,
      Function<ReferenceSet, Identifier> judge,
      Draw draw,
      boolean genuine) {
    PlugWorkshop workshop = new PlugWorkshop(seed);
    Tally tally = new Tally();
    ReferenceSet set = workshop.set(profiles);
    Identifier identifier = judge.apply(PlugWorkshop.knowing(set, known));
    for (int i = 0; i < PLUGS; i++) {
      if (i % 30 == 0) { // a new set now and then
        set = workshop.set(profiles);
        identifier = judge.apply(PlugWorkshop.knowing(set, known));
      }
      PlugProfile truth = set.profiles().get(workshop.random.nextInt(profiles));
      Map<Dimension, Double> plug = draw.plug(workshop, truth);
      PlugWorkshop.Caliper caliper = workshop.caliper(identifier.instrument());
      List<PlugReading> taken = new ArrayList<>();
      Identification answer = identifier.identify(taken);
      while (answer.verdict() != PlugVerdict.IDENTIFIED
          && taken.size() < most
          && !answer.nextReadings().isEmpty()) {
        taken.add(caliper.read(answer.nextReadings().get(0).dimension(), plug));
        answer = identifier.identify(taken);
      }
      tally.plugs++;
      tally.readings += taken.size();
      switch (answer.verdict()) {
        case IDENTIFIED -> {
          tally.identified++;
          tally.wrong += genuine && answer.profile().orElseThrow().id().equals(truth.id()) ? 0 : 1;
        }
        case CANDIDATE -> tally.candidates++;
        case NO_MATCH -> tally.refused++;
        case AMBIGUOUS, INSUFFICIENT_DATA -> tally.ambiguous++;
      }
    }
    return tally;
  }

  private static final List<String> HEADINGS = List.of(
      "plugs",
      "drawn",
      "identified",
      "of them wrong",
      "candidate only",
      "ambiguous",
      "no match",
      "readings");

  private static Draw copies(int changed, double least, double most) {
    return (workshop, profile) -> workshop.copy(profile, changed, least, most);
  }

  @Test
  void unknown_plugs_are_hardly_ever_identified_and_genuine_ones_nearly_always() {
    List<List<String>> rows = new ArrayList<>();
    for (int profiles : new int[] {3, 8, 20}) {
      String in = ", " + profiles + " profiles";
      Tally known = follow(profiles, profiles, 9, Identifier::of, PlugWorkshop::genuine, true);
      rows.add(known.row("genuine, as new" + in));
      Tally trusted = follow(
          profiles + 1,
          profiles,
          5,
          set -> Identifier.of(set).withoutNearCopies(),
          PlugWorkshop::genuine,
          true);
      rows.add(trusted.row("the same, no near copies about, five readings" + in));
      Tally strange = follow(
          profiles + 2,
          profiles,
          9,
          Identifier::of,
          (workshop, profile) -> workshop.anySizes(),
          false);
      rows.add(strange.row("elsewhere in the size class" + in));
      Tally trustedStrange = follow(
          profiles + 3,
          profiles,
          9,
          set -> Identifier.of(set).withoutNearCopies(),
          (workshop, profile) -> workshop.anySizes(),
          false);
      rows.add(trustedStrange.row("the same, no near copies about" + in));
      Tally copies = follow(profiles + 4, profiles, 9, Identifier::of, copies(3, 0.3, 1.0), false);
      rows.add(copies.row("near copies, 3 of 9 sizes off by 0.3 to 1 mm" + in));
      Tally least = follow(profiles + 5, profiles, 9, Identifier::of, copies(3, 0.3, 0.3), false);
      rows.add(least.row("near copies, 3 of 9 sizes off by 0.3 mm" + in));
      assertThat(known.share(known.identified)).isGreaterThanOrEqualTo(0.90);
      assertThat(trusted.share(trusted.identified)).isGreaterThanOrEqualTo(0.90);
      assertThat(known.wrong + trusted.wrong).isLessThanOrEqualTo(PLUGS / 100);
      for (Tally unknown : List.of(strange, trustedStrange, copies, least)) {
        assertThat(unknown.share(unknown.identified)).isLessThanOrEqualTo(0.01);
      }
    }
    for (double most : new double[] {1.0, 0.3}) { // where the method ends; nothing is promised
      rows.add(follow(30, 8, 9, Identifier::of, copies(1, 0.3, most), false)
          .row("near copies, 1 of 9 sizes off by 0.3 " + (most > 0.3 ? "to 1 mm" : "mm")
              + ", 8 profiles"));
    }
    ReliabilityTable.write("plugs", HEADINGS, rows);
  }

  /** What a set does not know of a profile, no reading tells; with one profile there is nothing to tell a plug from. */
  @Test
  void a_set_of_few_sizes_or_of_one_profile_identifies_no_unknown_plug() {
    List<List<String>> rows = new ArrayList<>();
    long seed = 50;
    for (int profiles : new int[] {1, 8}) {
      for (Set<Dimension> known : List.of(THREE, EIGHT, ALL)) {
        if (profiles == 8 && known.equals(ALL)) {
          continue; // in the table of whole sets
        }
        String in = ", " + profiles + (profiles == 1 ? " profile, " : " profiles, ") + known.size()
            + " sizes";
        Tally genuine =
            follow(seed++, profiles, known, 9, Identifier::of, PlugWorkshop::genuine, true);
        rows.add(genuine.row("genuine, as new" + in));
        Function<ReferenceSet, Identifier> trusting = set -> Identifier.of(set).withoutNearCopies();
        Tally trusted = follow(seed++, profiles, known, 5, trusting, PlugWorkshop::genuine, true);
        rows.add(trusted.row("the same, no near copies about, five readings" + in));
        Draw elsewhere = (workshop, profile) -> workshop.anySizes();
        Tally strange = follow(seed++, profiles, known, 9, Identifier::of, elsewhere, false);
        rows.add(strange.row("elsewhere in the size class" + in));
        Tally trustedStrange = follow(seed++, profiles, known, 9, trusting, elsewhere, false);
        rows.add(trustedStrange.row("the same, no near copies about" + in));
        Tally copies =
            follow(seed++, profiles, known, 9, Identifier::of, copies(3, 0.3, 1.0), false);
        rows.add(copies.row("near copies, 3 of 9 sizes off by 0.3 to 1 mm" + in));
        for (Tally unknown : List.of(strange, trustedStrange, copies)) {
          assertThat(unknown.share(unknown.identified)).as(in).isLessThanOrEqualTo(0.01);
        }
        assertThat(trusted.share(trusted.identified)).as(in).isGreaterThanOrEqualTo(0.90);
        assertThat(genuine.wrong + trusted.wrong).as(in).isLessThanOrEqualTo(PLUGS / 100);
        if (known.equals(ALL)) {
          assertThat(genuine.share(genuine.identified)).as(in).isGreaterThanOrEqualTo(0.90);
        } else {
          assertThat(genuine.identified).as(in).isZero();
          assertThat(genuine.share(genuine.candidates)).as(in).isGreaterThanOrEqualTo(0.90);
        }
      }
    }
    ReliabilityTable.write("plugsFew", HEADINGS, rows);
  }

  /** Half of the plugs worn, with the usual allowance and without a word about wear. */
  @Test
  void worn_plugs_are_hardly_ever_refused() {
    List<List<String>> rows = new ArrayList<>();
    for (int profiles : new int[] {3, 8, 20}) {
      for (boolean told : new boolean[] {true, false}) {
        Function<ReferenceSet, Identifier> judge = set -> told
            ? Identifier.of(set).withWearAllowance(Identifier.usualWear())
            : Identifier.of(set);
        Tally tally = follow(
            40 + profiles,
            profiles,
            9,
            judge,
            (workshop, profile) -> {
              Map<Dimension, Double> plug = workshop.genuine(profile);
              if (workshop.random.nextBoolean()) {
                workshop.wear(plug, 0.08, 0.2);
              }
              return plug;
            },
            true);
        rows.add(tally.row(
            (told ? "wear of 0.2 mm allowed, " : "wear not told, ") + profiles + " profiles"));
        assertThat(tally.share(tally.refused)).isLessThanOrEqualTo(0.02);
        assertThat(tally.share(tally.wrong)).isLessThanOrEqualTo(0.005);
      }
    }
    ReliabilityTable.write("plugsWorn", HEADINGS, rows);
  }

  /** Pairs of profiles so near to each other that the caliper decides; what is said with 99 % must be right so often. */
  @Test
  void what_is_said_with_a_chance_is_right_so_often_with_every_caliper() {
    List<List<String>> rows = new ArrayList<>();
    double[] from = {0.9, 0.99};
    double[] to = {0.99, 1.1};
    for (Instrument instrument : Instrument.values()) {
      int[] given = new int[2];
      int[] right = new int[2];
      double[] promised = new double[2];
      PlugWorkshop workshop = new PlugWorkshop(71);
      for (int i = 0; i < 40 * PLUGS; i++) {
        ReferenceSet pair = workshop.pair(0.09);
        PlugProfile truth = pair.profiles().get(workshop.random.nextInt(2));
        Map<Dimension, Double> plug = workshop.genuine(truth);
        PlugWorkshop.Caliper caliper = workshop.caliper(instrument);
        List<PlugReading> taken = List.of(
            caliper.read(Dimension.TIP_DIAMETER, plug),
            caliper.read(Dimension.COLLAR_DIAMETER, plug),
            caliper.read(Dimension.SHOULDER_DIAMETER, plug));
        ProfileCandidate best =
            Identifier.of(pair).withUnknownPrior(0.0).identify(taken).best();
        for (int band = 0; band < 2; band++) {
          if (best.probability() >= from[band] && best.probability() < to[band]) {
            given[band]++;
            promised[band] += best.probability();
            right[band] += best.profile().equals(truth) ? 1 : 0;
          }
        }
      }
      for (int band = 0; band < 2; band++) {
        double share = right[band] / (double) given[band];
        rows.add(List.of(
            instrument.label(),
            band == 0 ? "90 to 99 %" : "99 % or more",
            Integer.toString(given[band]),
            percent(promised[band] / given[band]),
            percent(share)));
        assertThat(given[band]).isGreaterThan(500);
        assertThat(share)
            .as("%s, band %d, promised %.4f", instrument, band, promised[band] / given[band])
            .isGreaterThanOrEqualTo(band == 0 ? promised[0] / given[0] - 0.02 : 0.99);
      }
    }
    ReliabilityTable.write(
        "plugsCalibration",
        List.of("caliper", "chance said", "answers", "promised", "right"),
        rows);
  }

  /** One reading in five is a slip; is it told which? */
  @Test
  void slips_are_found_where_the_other_readings_agree() {
    List<List<String>> rows = new ArrayList<>();
    for (String what :
        List.of("inches typed", "another size", "digits exchanged", "decimal point", "misread")) {
      PlugWorkshop workshop = new PlugWorkshop(what.hashCode());
      int found = 0;
      int silent = 0;
      int plugs = PLUGS;
      ReferenceSet set = workshop.set(8);
      for (int i = 0; i < plugs; i++) {
        PlugProfile truth = set.profiles().get(workshop.random.nextInt(8));
        Map<Dimension, Double> plug = workshop.genuine(truth);
        PlugWorkshop.Caliper caliper = workshop.caliper(Instrument.DIGITAL_CALIPER);
        List<PlugReading> taken = workshop.withSlip(plug, caliper, what);
        Identification answer = Identifier.of(set).identify(taken);
        PlugReading slip = taken.get(4);
        found += !answer.slips().isEmpty()
                && answer.slips().get(0).readings().equals(List.of(slip))
                && answer.slips().get(0).profile().equals(truth)
            ? 1
            : 0;
        silent += answer.verdict() == PlugVerdict.IDENTIFIED ? 1 : 0;
      }
      rows.add(List.of(
          what,
          Integer.toString(plugs),
          percent(found / (double) plugs),
          percent(silent / (double) plugs)));
      assertThat(found / (double) plugs).as(what).isGreaterThan(0.8);
      assertThat(silent / (double) plugs).as(what).isLessThanOrEqualTo(0.01);
    }
    ReliabilityTable.write(
        "plugsSlips",
        List.of("slip", "plugs", "told which reading", "identified all the same"),
        rows);
  }
}
