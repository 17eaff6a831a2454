package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.safety.Caution;
import org.airfit.thread.Gender;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which flares, ports, studs and claws go on which, held against the reference cases and against the rule said anew. */
class FormPairsTest {

  private static Mating mating(String one, String other) {
    return Mating.of(End.parse(one), End.parse(other));
  }

  private static Row referenceCase(String id) {
    return Rows.of(FormPairsTest.class, "end_mating_cases.csv")
        .filter(row -> row.text("id").equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static void never(String one, String other) {
    assertThat(mating(one, other).verdict().isSound()).as(one + " and " + other).isFalse();
    assertThat(mating(other, one).verdict()).isEqualTo(mating(one, other).verdict());
  }

  @Test
  void the_worked_verdicts_of_the_reference_are_met() {
    Row flares = referenceCase("K01");
    never(flares.text("offered"), flares.text("onto"));
    Row port = referenceCase("K02");
    never(port.text("offered") + " male", port.text("onto"));
    Row face = referenceCase("K03");
    Mating joins = mating(face.text("offered"), face.text("onto").replace("ISO 1179 ", ""));
    assertThat(face.text("verdict")).isEqualTo("joins");
    assertThat(joins.verdict()).isEqualTo(MatingVerdict.SEALS_ON_FACE);
    assertThat(joins.seal()).contains(Seal.RING_OF_PART);
    Row rattles = referenceCase("K04");
    for (String form : List.of(" with O-ring", " with washer", " with ring")) {
      never(rattles.text("offered") + form, "37° flare 1/2-20 nut");
      never(rattles.text("offered") + form, "1/2-20 O-ring port");
    }
    Row claws = referenceCase("K07");
    never(claws.text("offered"), claws.text("onto"));
    Row water = referenceCase("K08");
    String hose = water.text("offered").replace(" nozzle", "");
    never(hose + " male", "3/4-14 NPT female");
    never(hose + " female", "3/4-14 NPT male");
    never(hose + " male", "3/4 in hose");
  }

  /** Two threads of a confusion go together in no form; the pairs are those of confusions.csv of the thread tables. */
  @Test
  void threads_that_are_taken_for_each_other_make_no_joint_in_any_form() {
    List<End> ends = Stream.concat(
            FormTest.everyForm().stream(),
            Stream.of("G 1/8", "G 1", "1/8 NPT", "1/4 NPT", "1/2 NPT", "3/4 NPT")
                .flatMap(name -> Stream.of(name + " male", name + " female"))
                .map(End::parse))
        .toList();
    List<Row> confusions = Rows.of(FormPairsTest.class, "/org/airfit/thread/confusions.csv")
        // no air part has a G 5/8 thread
        .filter(row -> !(row.text("end_a") + row.text("end_b")).contains("G 5/8"))
        .toList();
    assertThat(confusions).hasSizeGreaterThan(8);
    for (Row row : confusions) {
      List<End> as = ends.stream().filter(end -> has(end, row.text("end_a"))).toList();
      List<End> bs = ends.stream().filter(end -> has(end, row.text("end_b"))).toList();
      assertThat(as).as(row.text("end_a")).isNotEmpty();
      assertThat(bs).as(row.text("end_b")).isNotEmpty();
      for (End a : as) {
        for (End b : bs) {
          assertThat(Mating.of(a, b).verdict().isSound()).as(a + " and " + b).isFalse();
          assertThat(Mating.isSound(a, b)).isFalse();
        }
      }
    }
  }

  private static boolean has(End end, String thread) {
    String name = end instanceof End.Threaded pipe
        ? ThreadNames.of(pipe.thread())
        : end instanceof End.Formed formed ? ThreadNames.of(formed.thread()) : "";
    return name.equals(thread) || thread.equals("NPT " + name.replace(" NPT", ""));
  }

  /** The rule said anew: one thread, two genders, and the forms that are made for each other. */
  private static boolean goesOn(End one, End other) {
    if (one instanceof End.Claw a && other instanceof End.Claw b) {
      return a.equals(b) && !a.label().startsWith("four");
    }
    if (!(one instanceof End.Formed a) || !(other instanceof End.Formed b)) {
      return false;
    }
    String male = (a.gender() == Gender.MALE ? a : b).form().name();
    String female = (a.gender() == Gender.MALE ? b : a).form().name();
    boolean paired = List.of(
            "FLARE_37 FLARE_37",
            "FLARE_45 FLARE_45",
            "INVERTED_FLARE INVERTED_FLARE",
            "O_RING O_RING",
            "WASHER FLAT_FACE",
            "RING FLAT_FACE")
        .contains(male + " " + female);
    return paired
        && a.gender() != b.gender()
        && ThreadNames.of(a.thread()).equals(ThreadNames.of(b.thread()));
  }

  @Test
  void of_all_pairs_of_forms_those_made_for_each_other_are_sound_and_no_others() {
    List<End> ends = FormTest.everyForm();
    int sound = 0;
    for (int i = 0; i < ends.size(); i++) {
      for (int j = i % 3; j < ends.size(); j += 3) {
        End one = ends.get(i);
        End other = ends.get(j);
        boolean wanted = goesOn(one, other);
        assertThat(Mating.isSound(one, other)).as(one + " and " + other).isEqualTo(wanted);
        if (wanted || (i + j) % 17 == 0) {
          Mating mating = Mating.of(one, other);
          assertThat(mating.verdict().isSound()).as(mating.toString()).isEqualTo(wanted);
          assertThat(mating.seal().isPresent()).isEqualTo(wanted);
          assertThat(mating.turning().isPresent()).isEqualTo(wanted);
          assertThat(mating.reason()).isNotBlank();
          sound += wanted ? 1 : 0;
        }
      }
    }
    assertThat(sound).isGreaterThan(100);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "37° flare 9/16-18 male, 37° flare 9/16-18 nut, CONE, ``, NUT, Both have the 37° flare and the thread 9/16-18",
        "37° flare 9/16-18 male, 37° flare 9/16-18 female fixed, CONE, ``, PART, metal cone on metal cone",
        "inverted flare 7/16-24 nut, inverted flare 7/16-24 female, CONE, ``, NUT, for tube of 1/4 in",
        "9/16-18 male with O-ring, 9/16-18 O-ring port, RING_OF_PART, ``, PART, The O-ring on the male end seals in the cone",
        "M14x1.5 male with O-ring, M14x1.5 O-ring port, RING_OF_PART, ``, PART, The O-ring on the male end seals in the cone",
        "M14x1.5 male with ring, M14x1.5 flat-face port, RING_OF_PART, ``, PART, The ring on the male end seals on the flat face of the port; the thread only holds it in place.",
        "M14x1.5 male with washer, M14x1.5 flat-face port, WASHER, sealing washer for M14x1.5, PART, A sealing washer",
        "M5 male, M5 female, WASHER, sealing washer for M5, PART, A sealing washer between the shoulder of the male end and the flat face",
        "G 1/4 male with washer, G 1/4 port, WASHER, sealing washer for G 1/4, PART, A sealing washer between",
        "G 1/4 male, G 1/4 port, WASHER, sealing washer for G 1/4, PART, the male part must have such a shoulder",
        "G 1/4 male swivel, G 1/4 port, WASHER, sealing washer for G 1/4, NUT, the male part must have such a shoulder",
        "G 1/4 male with washer, G 1/4 female, WASHER, sealing washer for G 1/4, PART, flat and as wide as the washer",
        "G 1/4 male with ring, G 1/4 female, RING_OF_PART, ``, PART, flat and as wide as the ring",
        "1/2 NPSM female swivel, 1/2 NPT male, SEAT, ``, NUT, A free-fitting thread only holds the parts together",
        "1/2 NPT male swivel, 1/2 NPT female, THREAD_SEALANT, thread sealant for 1/2 NPT, NUT, Taper in taper",
        "1/2 NPT male, 1/2 NPT female, THREAD_SEALANT, thread sealant for 1/2 NPT, PART, Taper in taper",
        "European claw, European claw, RING_OF_PART, ``, EIGHTH, Claws of this kind are 42 mm apart",
        "two-lug claw, two-lug claw, RING_OF_PART, ``, EIGHTH, Two-lug heads are of one class up to 1 in",
        "8 mm tube, 8 mm push-in, RING_OF_PART, ``, NOTHING, The push-in end is made for this tube",
        "10 mm hose, 10 mm barb, CLAMP_OR_FERRULE, clamp or ferrule for 10 mm hose, NOTHING, made for this bore"
      })
  void a_sound_pair_says_what_seals_what_to_buy_what_turns_and_why(
      String one, String other, Seal seal, String item, Turning turning, String why) {
    for (Mating mating : List.of(mating(one, other), mating(other, one))) {
      assertThat(mating.verdict().isSound()).isTrue();
      assertThat(mating.seal()).contains(seal);
      assertThat(mating.sealItem().orElse("")).isEqualTo(item);
      assertThat(mating.turning()).contains(turning);
      assertThat(mating.reason()).contains(why);
      assertThat(mating.between()).isEmpty();
      assertThat(Mating.isSound(mating.one(), mating.other())).isTrue();
    }
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "37° flare 7/16-20 male, 45° flare 7/16-20 nut, NOT_TO_BE_RELIED_ON, `The thread 7/16-20 is the same and runs in,"
            + " but the cones do not: 37° flare meets 45° flare on a line, which leaks under pressure and spoils the"
            + " cones.`",
        "37° flare 9/16-18 male, 9/16-18 O-ring port, NOT_TO_BE_RELIED_ON, `The thread 9/16-18 is the same and runs in,"
            + " but the male part has a metal cone (37° flare) and the female part an O-ring joint, so that nothing"
            + " seals.`",
        "9/16-18 male with O-ring, 37° flare 9/16-18 nut, NOT_TO_BE_RELIED_ON, `the male part has an O-ring joint and the"
            + " female part a metal cone (37° flare)`",
        "M14x1.5 male with washer, M14x1.5 O-ring port, NOT_TO_BE_RELIED_ON, `the male part has a washer for a flat face"
            + " and the female part an O-ring joint`",
        "M14x1.5 male with ring, 24° cone M14x1.5 nut, NOT_TO_BE_RELIED_ON, `the male part has a ring for a flat face"
            + " and the female part a metal cone (24° cone)`",
        "M14x1.5 male with O-ring, M14x1.5 flat-face port, NOT_TO_BE_RELIED_ON, `the female part a flat face`",
        "24° cone M14x1.5 male, 24° cone M14x1.5 nut, NOT_JUDGED, `Both are 24° cones with M14x1.5, but the same thread"
            + " serves a light and a heavy series with tubes of different sizes, and the table of ISO 8434-1 was not"
            + " seen.`",
        "37° flare 9/16-18 male, 37° flare 9/16-18 male, DOES_NOT_FIT, Both are male.",
        "G 1/4 port, 1/4 NPT female, DOES_NOT_FIT, Both are female.",
        "four-lug claw, four-lug claw, NOT_JUDGED, was not read: ask the maker",
        "two-lug claw, four-lug claw, DOES_NOT_FIT, two-lug claw and four-lug claw do not lock on each other.",
        "two-lug claw, European claw, DOES_NOT_FIT, `The heads are different parts, although the trade calls more than"
            + " one of them universal: two-lug claw and European claw do not lock on each other. Exchange one of the"
            + " halves for one of the other kind.`",
        "two-lug claw, 3/4 in hose, DOES_NOT_FIT, A two-lug claw and a 3/4 in hose have nothing to hold on to.",
        "M5 female, 4 mm tube, DOES_NOT_FIT, An M5 female and a 4 mm tube have nothing to hold on to.",
        "R 1/4, G 1/4 port, NOT_TO_BE_RELIED_ON, R in G is refused",
        "G 1/4 male with washer, Rp 1/4, NOT_TO_BE_RELIED_ON, G in Rp is refused",
        "G 1/4 male with washer, G 3/8 port, DOES_NOT_FIT, `The threads differ. G 1/4 male with washer measures 13.16 mm"
            + " over the crests, G 3/8 port is 14.95 mm wide inside and 16.66 mm at the roots: it drops in without"
            + " catching.`",
        "1/4 NPT male, G 1/4 port, STARTS_AND_JAMS, jams within about",
        "37° flare 9/16-18 male, 3/8 in tube, DOES_NOT_FIT, `No cone holds the plain end of a 3/8 in tube: it is flared"
            + " for the 37° flare and held by the nut of its size, and then its end is a 37° flare too.`",
        "24° cone M14x1.5 male, 8 mm tube, DOES_NOT_FIT, `No cone holds the plain end of an 8 mm tube: a cutting ring or"
            + " nipple and a nut of the size of the tube belong on it.`",
        "9/16-18 O-ring port, 3/8 in tube, DOES_NOT_FIT, have nothing to hold on to."
      })
  void a_pair_that_is_none_says_why(String one, String other, MatingVerdict verdict, String why) {
    for (Mating mating : List.of(mating(one, other), mating(other, one))) {
      assertThat(mating.verdict()).isEqualTo(verdict);
      assertThat(mating.verdict().isSound()).isFalse();
      assertThat(mating.seal()).isEmpty();
      assertThat(mating.sealItem()).isEmpty();
      assertThat(mating.turning()).isEmpty();
      assertThat(mating.retainer()).isEmpty();
    }
    assertThat(mating(one, other).reason()).contains(why);
  }

  /**
   * Diameters are the limits of metric_thread_limits.csv and un_thread_limits.csv of the thread tables, and of ASME
   * B1.20.1: E0 + h and E1 ± h of 1/4 NPT.
   */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "M12x1.5 male with O-ring, 37° flare 1/2-20 nut, STARTS_AND_JAMS, `The threads differ. M12x1.5 male with O-ring"
            + " measures 11.73 to 11.97 mm over the crests, 37° flare 1/2-20 female swivel is 11.33 to 11.61 mm wide"
            + " inside and 12.67 mm at the roots: it catches, then jams or strips, because the pitches are 1.5 mm and"
            + " 1.27 mm.`",
        "37° flare 9/16-18 male, 45° flare 5/8-18 nut, DOES_NOT_FIT, `14.03 to 14.25 mm over the crests, 45° flare"
            + " 5/8-18 female swivel is 14.35 to 14.68 mm wide inside and 15.84 mm at the roots: it drops in without"
            + " catching.`",
        "9/16-18 male with O-ring, 1/4 NPT female, DOES_NOT_FIT, `14.03 to 14.25 mm over the crests, 1/4 NPT female is"
            + " 11.36 mm wide inside and 13.62 mm at the roots: it does not enter.`",
        "1/4 NPT male, 9/16-18 O-ring port, NOT_TO_BE_RELIED_ON, `1/4 NPT male measures 13.25 mm over the crests, 9/16-18"
            + " O-ring port is 12.75 to 13.08 mm wide inside and 14.25 mm at the roots: with one pitch it runs in and may"
            + " look right, but they are threads of two names and nothing seals.`",
        "M14x1.5 port, 1/4 NPT male, STARTS_AND_JAMS, `because the pitches are 1.411 mm and 1.5 mm.`",
        "M10x1 male with O-ring, G 1/8 port, DOES_NOT_FIT, it does not enter.",
        "M5 male, 1/8 NPT female, DOES_NOT_FIT, `M5 male measures 4.826 to 4.976 mm over the crests, 1/8 NPT female is"
            + " 8.737 mm wide inside and 10.24 mm at the roots: it drops in without catching.`",
        "9/16-18 male with O-ring, 1/4 NPTF female, NOT_TO_BE_RELIED_ON, `How far it goes was not worked out, and it is a"
            + " pair of no standard.`"
      })
  void threads_that_differ_are_judged_by_what_they_measure(
      String one, String other, MatingVerdict verdict, String why) {
    assertThat(mating(one, other).verdict()).isEqualTo(verdict);
    assertThat(mating(one, other).reason()).contains(why);
    assertThat(mating(other, one).reason()).contains(why);
  }

  @Test
  void a_gap_is_judged_by_crest_bore_root_and_pitch_at_their_bounds() {
    assertThat(gap(10.0, 10.0, 8.0, 10.0, 1.0, 1.0)).isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
    assertThat(gap(10.01, 10.1, 8.0, 10.0, 1.0, 1.0)).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(gap(7.8, 8.0, 8.0, 10.0, 1.0, 1.0)).isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
    assertThat(gap(7.8, 7.99, 8.0, 10.0, 1.0, 1.0)).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(gap(9.0, 9.0, 8.0, 10.0, 1.0, 1.0019)).isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
    assertThat(gap(9.0, 9.0, 8.0, 10.0, 1.0, 1.0021)).isEqualTo(MatingVerdict.STARTS_AND_JAMS);
    assertThat(gap(9.0, 9.0, 8.0, 10.0, 1.0021, 1.0)).isEqualTo(MatingVerdict.STARTS_AND_JAMS);
  }

  private static MatingVerdict gap(
      double crestLeast, double crestMost, double bore, double root, double male, double female) {
    return new ThreadGap(
            new org.airfit.thread.Limits(mm(crestLeast), mm(crestMost)),
            new org.airfit.thread.Limits(mm(bore), mm(bore + 0.2)),
            mm(root),
            mm(male),
            mm(female))
        .verdict();
  }

  private static org.airfit.quantity.Length mm(double millimetres) {
    return org.airfit.quantity.Length.ofMillimetres(millimetres);
  }

  @Test
  void a_water_hose_is_refused_for_air_with_the_reason_and_nothing_goes_between() {
    Mating together = mating("garden hose male", "garden hose female");
    assertThat(together.verdict()).isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
    assertThat(together.reason())
        .isEqualTo(
            "They go together for water only. 3/4-11.5 NH is a coupling of a garden hose, for water: neither coupling"
                + " nor hose is made or rated for compressed air, and they burst or part. Nothing goes between: no"
                + " adapter makes a water hose an air hose. Use an air hose with ends for air.");
    Mating pipe = mating("3/4 NPT male", "garden hose female");
    assertThat(pipe.verdict()).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(pipe.reason()).contains("11.5 against 14 threads per inch");
    Mating fire = mating("1-8 NH male", "1 NPT female");
    assertThat(fire.reason()).contains("a fire hose, for water").contains("8 against 11.5 threads");
    assertThat(mating("garden hose male", "9/16-18 O-ring port").reason())
        .contains("11.5 against 18 threads per inch");
    assertThat(mating("garden hose male", "3/4 in hose").reason())
        .doesNotContain("threads per inch");
    assertThat(mating("garden hose male", "1-8 NH female").verdict())
        .isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(mating("garden hose male", "3/4-11.5 NH male").verdict())
        .isEqualTo(MatingVerdict.DOES_NOT_FIT);
    for (Mating mating : List.of(together, pipe, fire)) {
      assertThat(mating.cautions()).extracting(Caution::title).containsExactly("Water hose");
      assertThat(mating.between()).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "37° flare 9/16-18 male, 37° flare 9/16-18 nut, Cone on cone, No sealant on a flare",
    "9/16-18 male with O-ring, 9/16-18 O-ring port, Ring in its place, No tape on a parallel thread",
    "G 1/4 male with ring, G 1/4 port, Ring in its place, No tape on a parallel thread",
    "G 1/4 male with washer, G 1/4 port, Seat or washer, No tape on a parallel thread",
    "37° flare 7/16-20 male, 45° flare 7/16-20 nut, The thread is not the joint, Sealant cures no mismatch",
    "1/4 NPT male, 9/16-18 O-ring port, Threads of two standards, Sealant cures no mismatch"
  })
  void each_pair_carries_its_own_warning_and_its_word_on_sealant(
      String one, String other, String caution, String sealant) {
    Mating mating = mating(one, other);
    assertThat(mating.cautions()).extracting(Caution::title).containsExactly(caution);
    assertThat(mating.sealantNotes()).extracting(Caution::title).containsExactly(sealant);
  }

  private static String claw(String topic, String statement) {
    return Rows.of(FormPairsTest.class, "claw_couplings.csv")
        .filter(row -> row.text("topic").startsWith(topic))
        .filter(row -> row.text("statement").startsWith(statement))
        .map(row -> row.text("value"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void claws_are_judged_by_what_the_reference_says_of_their_heads() {
    assertThat(mating("European claw", "European claw").reason())
        .contains(claw("European claw", "claw spacing") + " mm apart on every size");
    assertThat(mating("two-lug claw", "two-lug claw").reason())
        .contains(
            "up to " + claw("North American two-lug claw", "used for hose") + " in hose bore");
    assertThat(claw("mixing", "North American two-lug and European")).isEqualTo("never");
    assertThat(mating("two-lug claw", "European claw").verdict().isSound()).isFalse();
    assertThat(claw("North American four-lug claw", "sizes; does not mate with the two-lug class"))
        .isEqualTo("1-1/4 to 2");
    assertThat(mating("two-lug claw", "four-lug claw").verdict().isSound()).isFalse();
  }

  /** 10 bar stands in claw_couplings.csv of the reference, as a note quotes the standard. */
  /** 42 mm / 25.4 mm is 1.65 in. */
  @Test
  void how_far_claws_are_apart_is_told_in_the_units_asked_for() {
    assertThat(mating("European claw", "European claw").reason(UnitSystem.US))
        .contains("1.65")
        .contains(" in apart on every size")
        .doesNotContain("mm");
  }

  @Test
  void claws_want_a_clip_and_the_european_ones_end_at_ten_bar() {
    Mating european = mating("European claw", "European claw");
    assertThat(european.cautions())
        .extracting(Caution::title)
        .containsExactly("Clip or pin in every pair", "10 bar at most");
    assertThat(european.retainer()).contains("retaining clip or pin for a European claw");
    assertThat(european.sealantNotes()).isEmpty();
    Mating twoLug = mating("two-lug claw", "two-lug claw");
    assertThat(twoLug.cautions())
        .extracting(Caution::title)
        .containsExactly("Clip or pin in every pair");
    assertThat(twoLug.retainer()).contains("retaining clip or pin for a two-lug claw");
    assertThat(mating("8 mm tube", "8 mm push-in").retainer()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "1/4 NPT male, 1/4 NPT female, `One of the two parts must be free to turn; where both stand still, put a swivel or"
            + " union between.`",
        "37° flare 9/16-18 male, 37° flare 9/16-18 nut, `Both parts may stand still: the nut or swivel is turned, both"
            + " parts may stay as they are.`",
        "8 mm tube, 8 mm push-in, `Both parts may stand still: it is pushed together, nothing is turned.`",
        "1/4 NPT male, 1/4 NPT male, `Begin at the part that stands still and screw one piece on another; the last joint"
            + " turns the other part. Where both stand still, put a swivel or union between.`",
        "1/4 NPT female, 8 mm tube, `Close the joint of 8 mm push-in and 8 mm tube last: it is pushed together, nothing is"
            + " turned.`",
        "37° flare 9/16-18 male, 9/16-18 O-ring port, `Close the joint of 37° flare 9/16-18 male and 37° flare 9/16-18"
            + " female swivel last: the nut or swivel is turned, both parts may stay as they are.`"
      })
  void a_chain_says_which_joint_is_closed_last(String one, String other, String order) {
    assertThat(Chain.between(End.parse(one), End.parse(other)).assembly()).contains(order);
  }

  @Test
  void what_is_not_joined_has_no_order() {
    assertThat(Chain.between(End.parse("garden hose male"), End.parse("3/4 NPT female"))
            .assembly())
        .isEmpty();
  }
}
