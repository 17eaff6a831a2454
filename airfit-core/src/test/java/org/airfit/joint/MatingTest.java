package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.ThreadTables;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.safety.Caution;
import org.airfit.source.Basis;
import org.airfit.thread.BsppThread;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NpsmThread;
import org.airfit.thread.NptThread;
import org.airfit.thread.PipeThread;
import org.airfit.thread.PipeThreads;
import org.airfit.thread.RpThread;
import org.airfit.thread.ThreadFamily;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class MatingTest {

  private static Mating mating(String one, String other) {
    return Mating.of(End.parse(one), End.parse(other));
  }

  static Stream<Row> cases() {
    return Rows.of(MatingTest.class, "mating_cases.csv");
  }

  static Stream<Row> combinations() {
    return Rows.of(MatingTest.class, "thread_combinations.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void worked_verdicts_are_met(Row row) {
    Mating mating = mating(row.text("male"), row.text("female"));
    String seal = row.text("seal");
    if (seal.startsWith("thread")) {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.SEALS_WITH_SEALANT);
    } else if (seal.startsWith("face") || seal.startsWith("washer")) {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.SEALS_ON_FACE);
    } else {
      assertThat(mating.verdict().isSound()).as(row.text("why")).isFalse();
    }
    String assembles = row.text("assembles");
    if (assembles.equals("no") || assembles.startsWith("no start")) {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    } else {
      assertThat(mating.verdict()).isNotEqualTo(MatingVerdict.DOES_NOT_FIT);
    }
  }

  /** The size 1/2 is there in every family. */
  @ParameterizedTest(name = "{0} in {index}")
  @MethodSource("combinations")
  void every_combination_of_families_is_judged_as_the_standards_judge_it(Row row) {
    Mating mating =
        mating("1/2 " + row.text("external") + " male", "1/2 " + internal(row) + " female");
    String onThread = row.text("seals_on_thread");
    String where = row.text("seal_where");
    String why = row + " in " + row.text("internal") + ": " + row.text("reason");
    switch (onThread) {
      case "yes" ->
        assertThat(mating.verdict())
            .as(why)
            .isIn(MatingVerdict.SEALS_WITH_SEALANT, MatingVerdict.SEALS_DRY);
      // documents disagree on R in G; the other conditions stand in the reason
      case "conditional" ->
        assertThat(mating.verdict())
            .as(why)
            .isIn(
                MatingVerdict.SEALS_WITH_SEALANT,
                MatingVerdict.SEALS_DRY,
                MatingVerdict.NOT_TO_BE_RELIED_ON);
      case "never" -> assertThat(mating.verdict().isSound()).as(why).isFalse();
      default -> {
        boolean onFace = !where.equals("none") && row.text("assembles").equals("yes");
        assertThat(mating.verdict() == MatingVerdict.SEALS_ON_FACE).as(why).isEqualTo(onFace);
        assertThat(mating.verdict().isSound()).as(why).isEqualTo(onFace);
      }
    }
    if (row.text("condition").startsWith("dry")) {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.SEALS_DRY);
    }
    if (row.text("condition").contains("sealant")) {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.SEALS_WITH_SEALANT);
    }
    if (row.text("assembles").equals("no")) {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    }
  }

  private static String internal(Row row) {
    return row.text("internal");
  }

  @ParameterizedTest
  @CsvSource({
    "NPT 1/2 male, NPT 1/2 male, coupling",
    "R 1/2 female, NPT 1/2 female, adapter nipple",
    "NPT 1/2 male, 1/2 in hose, nothing to hold on to",
    "1/2 in barb, 1/2 in barb, nothing to hold on to",
    "1/2 in barb, 3/8 in hose, would not go on",
    "1/4 in barb, 3/8 in hose, loose",
    "NPT 1/4 male, NPT 3/8 female, drops in",
    "NPT 3/8 male, NPT 1/4 female, does not enter",
    "NPTF 3/8 male, NPTF 1/4 female, does not enter"
  })
  void what_has_nothing_to_hold_on_to_does_not_fit(String one, String other, String why) {
    assertThat(mating(one, other).verdict()).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(mating(one, other).reason()).contains(why);
    assertThat(mating(other, one).verdict()).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(mating(one, other).sealantNotes()).isEmpty();
    assertThat(mating(one, other).cautions()).isEmpty();
    assertThat(mating(one, other).engagement()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "3/8 in barb, 3/8 in hose",
    "3/8 in barb, 10 mm hose",
    "19 mm barb, 3/4 in hose",
    "11 mm barb, 11 mm hose"
  })
  void a_barb_holds_the_hose_it_is_made_for_in_either_order_and_by_either_name(
      String barb, String hose) {
    for (Mating mating : new Mating[] {mating(barb, hose), mating(hose, barb)}) {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.HOLDS_WITH_CLAMP);
      assertThat(mating.verdict().isSound()).isTrue();
      assertThat(mating.cautions())
          .extracting(Caution::text)
          .anyMatch(text -> text.contains("clamp") && text.contains("push-in"));
      assertThat(mating.sealantNotes()).isEmpty();
    }
  }

  @Test
  void it_matters_which_one_is_male() {
    assertThat(mating("NPT 1/8 male", "G 1/8 female").verdict())
        .isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(mating("R 1/8 male", "NPT 1/8 female").verdict())
        .isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
  }

  @Test
  void the_same_threads_per_inch_run_in_and_look_right() {
    Mating mating = mating("NPT 1/2 male", "G 1/2 female");
    assertThat(mating.verdict()).isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
    assertThat(mating.reason()).contains("looks right").contains("2.1 turns").contains("spiral");
    assertThat(mating.cautions()).extracting(Caution::title).contains("Threads of two standards");
    assertThat(mating.sealantNotes())
        .extracting(Caution::title)
        .containsExactly("Sealant cures no mismatch");
  }

  @Test
  void every_mismatch_of_two_pipe_threads_has_a_working_that_holds() {
    List<PipeThread> threads = Stream.of(ThreadFamily.values())
        .flatMap(family ->
            family.sizes().stream().flatMap(size -> PipeThreads.of(family, size).stream()))
        .toList();
    int worked = 0;
    for (PipeThread male : threads) {
      for (PipeThread female : threads) {
        if (male.family().has(Gender.MALE) && female.family().has(Gender.FEMALE)) {
          ThreadMismatch mismatch = new ThreadMismatch(male, female);
          for (UnitSystem units : UnitSystem.values()) {
            assertThat(mismatch.working(units).answers()).as("%s", mismatch).isNotEmpty();
            worked++;
          }
        }
      }
    }
    assertThat(worked).isGreaterThan(5_000);
  }

  @Test
  void what_was_not_worked_out_is_not_relied_on() {
    assertThat(mating("R 1/2 male", "NPTF 1/2 female").verdict())
        .isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
    assertThat(mating("R 1/2 male", "NPTF 1/2 female").mismatch()).isEmpty();
    assertThat(mating("NPSM 1/2 male", "NPT 1/2 female").reason()).contains("no standard");
  }

  @Test
  void a_taper_joint_tells_how_far_to_turn_it_and_how_to_seal_it() {
    Mating mating = mating("NPT 1/2 female", "NPT 1/2 male");
    Engagement engagement = mating.engagement().orElseThrow();
    assertThat(engagement)
        .hasToString("4.48 turns by hand, then 3 turns by wrench: 13.57 mm in all");
    assertThat(mating.sealantNotes())
        .extracting(Caution::title)
        .contains("Direction of tape", "Wraps of tape", "Never turn back", "Hand tight is a place");
    assertThat(mating.sealantNotes())
        .filteredOn(note -> note.title().equals("Wraps of tape"))
        .allMatch(note -> note.source().basis() == Basis.COMMON_PRACTICE)
        .allMatch(note -> note.text().contains("four wraps"));
    assertThat(mating("NPT 2 male", "NPT 2 female").sealantNotes())
        .as("size 2 is the last of the small ones")
        .filteredOn(note -> note.title().equals("Wraps of tape"))
        .allMatch(note -> note.text().contains("four wraps"));
    assertThat(mating("NPT 3 male", "NPT 3 female").sealantNotes())
        .filteredOn(note -> note.title().equals("Wraps of tape"))
        .allMatch(note -> note.text().contains("Eight"));
    assertThat(mating.cautions()).extracting(Caution::text).anyMatch(t -> t.contains("loose"));
    assertThat(mating("NPTF 1/2 male", "NPT 1/2 female").engagement()).isEmpty();
    assertThat(mating("G 1/2 male", "G 1/2 female").engagement()).isEmpty();
  }

  @Test
  void parallel_threads_want_a_face_and_no_tape() {
    Mating mating = mating("G 1/2 male", "G 1/2 female");
    assertThat(mating.sealantNotes())
        .extracting(Caution::title)
        .containsExactly("No tape on a parallel thread");
    assertThat(mating.cautions()).extracting(Caution::title).containsExactly("Seat or washer");
  }

  @Test
  void a_straight_coupling_is_for_low_pressure() {
    Mating mating = mating("NPT 1/2 male", "NPSC 1/2 female");
    assertThat(mating.verdict()).isEqualTo(MatingVerdict.SEALS_WITH_SEALANT);
    assertThat(mating.reason()).contains("low pressure");
    assertThat(mating.cautions()).extracting(Caution::title).contains("Straight coupling");
  }

  @Test
  void a_dryseal_pair_wants_no_sealant() {
    Mating mating = mating("NPTF 1/4 male", "NPTF 1/4 female");
    assertThat(mating.verdict()).isEqualTo(MatingVerdict.SEALS_DRY);
    assertThat(mating.sealantNotes()).extracting(Caution::title).containsExactly("Dryseal threads");
    assertThat(mating.cautions()).isEmpty();
  }

  /** One answer in verdict, reason, caution and sealant notes: no washer, no sealant, no pressure. */
  @Test
  void a_taper_male_in_a_parallel_female_of_iso_228_is_refused_in_one_voice() {
    for (String size : List.of("1/8", "1/4", "1/2", "2")) {
      Mating mating = mating("R " + size + " male", "G " + size + " female");
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
      assertThat(mating.reason())
          .startsWith("R in G is refused: by ISO 228-1")
          .contains("washer", "ISO 7-1 pairs R with Rc or Rp only")
          .doesNotContain("allowed", "ask")
          .endsWith("Between them goes an adapter Rc " + size + " female × G " + size + " male.");
      assertThat(mating.source().toString()).contains("GOST 6357-81", "GB/T 7307-2001");
      assertThat(mating.cautions()).singleElement().satisfies(caution -> {
        assertThat(caution.title()).isEqualTo("Pair of no standard");
        assertThat(caution.text()).contains("neither sealant nor a washer changes that");
      });
    }
    assertThat(mating("G 1/4 male", "Rp 1/4 female").reason()).startsWith("G in Rp is refused");
    assertThat(mating("1/4 NPSM male", "1/4 NPT female").cautions())
        .extracting(Caution::title)
        .containsExactly("Pair of no standard");
  }

  /** ASME B1.20.3-1976 section 1.4.1.1 and 1.4.1.2 as read in an extract; NPSF and NPSI with NPTF from memory. */
  @ParameterizedTest(name = "{0} in {1}")
  @CsvSource({
    "NPTF, NPTF, SEALS_DRY, STANDARD",
    "NPTF, PTF-SAE SHORT, SEALS_DRY, STANDARD",
    "NPTF, NPSF, SEALS_DRY, FROM_MEMORY",
    "NPTF, NPSI, SEALS_DRY, FROM_MEMORY",
    "PTF-SAE SHORT, NPSI, SEALS_DRY, STANDARD",
    "PTF-SAE SHORT, NPTF, SEALS_DRY, STANDARD",
    "PTF-SAE SHORT, PTF-SAE SHORT, DOES_NOT_FIT, STANDARD",
    "PTF-SAE SHORT, NPSF, DOES_NOT_FIT, STANDARD",
    "NPT, NPTF, SEALS_WITH_SEALANT, HANDBOOK",
    "NPTF, NPT, SEALS_WITH_SEALANT, HANDBOOK",
    "NPT, NPSF, NOT_JUDGED, DERIVED",
    "NPT, NPSI, NOT_JUDGED, DERIVED",
    "NPT, PTF-SAE SHORT, NOT_JUDGED, DERIVED",
    "PTF-SAE SHORT, NPT, NOT_JUDGED, DERIVED",
    "PTF-SAE SHORT, NPSC, NOT_JUDGED, DERIVED",
    "NPTF, NPSM, NOT_JUDGED, DERIVED",
    "NPTF, NPSC, NOT_JUDGED, DERIVED",
    "NPSM, NPTF, NOT_JUDGED, DERIVED",
    "NPSM, NPSI, NOT_JUDGED, DERIVED",
    "NPSM, NPT, NOT_TO_BE_RELIED_ON, DERIVED",
    "NPSM, NPSC, NOT_TO_BE_RELIED_ON, DERIVED"
  })
  void dryseal_pairs_are_as_the_standard_has_them_or_not_judged(
      String male, String female, MatingVerdict verdict, Basis basis) {
    Mating mating = mating("1/4 " + male + " male", "1/4 " + female + " female");
    assertThat(mating.verdict()).isEqualTo(verdict);
    assertThat(mating.source().basis()).isEqualTo(basis);
    if (verdict == MatingVerdict.NOT_JUDGED) {
      assertThat(mating.inWords()).contains("not judged: table not seen").contains("Ask the maker");
      assertThat(mating.cautions()).extracting(Caution::title).containsExactly("Not judged");
    }
    if (verdict == MatingVerdict.SEALS_DRY) {
      boolean full = male.equals("NPTF") && female.equals("NPTF");
      assertThat(mating.cautions())
          .extracting(Caution::title)
          .isEqualTo(full ? List.of() : List.of("Dryseal with fewer threads"));
    }
  }

  /** 20.716 mm over the first thread of 1/2 NPT; 1/4 NPT: E1 12.487 mm less 0.8 of 1.4111 mm of pitch. */
  @Test
  void two_sizes_are_refused_with_what_both_measure() {
    assertThat(mating("1/2 NPT male", "1/4 NPT female").reason())
        .startsWith(
            "The sizes differ: male 1/2, female 1/4 (20.72 mm over the crests into a bore of 11.36 mm), so it"
                + " does not enter. ");
    assertThat(mating("1/4 NPTF male", "1/2 NPTF female").reason())
        .as("no table of it was seen")
        .startsWith("The sizes differ: male 1/4, female 1/2, so it drops in without catching. ");
  }

  /** The same lengths in millimetres and in inches, each to four digits or to its last decimal. */
  @ParameterizedTest
  @CsvSource({
    "1/2 NPT male, 1/4 NPT female, 2", // two sizes
    "1/8 NPT male, G 1/8 female, 1", // two standards: too large by so much
    "M14x1.5 male with O-ring, 1/4 NPT female, 3", // a thread that is foreign to pipes
    "1/4 in tube, 6 mm push-in, 2"
  })
  void lengths_of_a_reason_are_in_the_units_asked_for(String one, String other, int lengths) {
    Mating mating = mating(one, other);
    List<Double> millimetres = lengths(mating.reason(), "mm");
    List<Double> inches = lengths(mating.reason(UnitSystem.US), "in");
    assertThat(millimetres).hasSizeGreaterThanOrEqualTo(lengths);
    assertThat(inches).as(mating.reason(UnitSystem.US)).hasSameSizeAs(millimetres);
    for (int i = 0; i < inches.size(); i++) {
      assertThat(25.4 * inches.get(i)).isCloseTo(millimetres.get(i), within(0.02));
    }
    assertThat(mating.inWords(UnitSystem.US)).endsWith(mating.reason(UnitSystem.US));
    assertThat(mating.working(UnitSystem.US).toText()).doesNotContain(" mm over");
  }

  /** ISO 1307 lets it measure 8.7 to 10.3 mm: by hand 8.7/25.4 = 0.34252 and 10.3/25.4 = 0.40551 in. */
  @Test
  void the_limits_of_a_hose_are_in_the_units_asked_for() {
    assertThat(mating("3/8 in barb", "8 mm hose").reason(UnitSystem.US))
        .contains("lets a 3/8 in hose measure 0.3425 to 0.4055 in: it would");
  }

  /** The numbers in front of a unit. */
  private static List<Double> lengths(String reason, String unit) {
    List<Double> lengths = new ArrayList<>();
    Matcher matcher = Pattern.compile(
            "([0-9.]+) (?:to ([0-9.]+) )?" + unit + "\\b(?! (?:hose|barb|tube|push-in))")
        .matcher(reason);
    while (matcher.find()) {
      lengths.add(Double.valueOf(matcher.group(1)));
      if (matcher.group(2) != null) {
        lengths.add(Double.valueOf(matcher.group(2)));
      }
    }
    return lengths;
  }

  @Test
  void what_is_refused_is_not_for_low_pressure_either() {
    assertThat(mating("1/4 NPSM male", "1/4 NPSC female").isForLowPressure()).isFalse();
    assertThat(mating("1/4 NPT male", "1/4 NPSC female").isForLowPressure()).isTrue();
    assertThat(mating("1/4 NPT male", "1/4 NPT female").isForLowPressure()).isFalse();
  }

  @Test
  void two_sizes_of_two_standards_say_both() {
    assertThat(mating("1/2 NPT male", "G 1/4 female").reason())
        .contains("does not enter; and NPT and G are threads of two standards.");
    assertThat(mating("1/2 NPT male", "1/4 NPT female").reason())
        .contains("so it does not enter. Between them goes")
        .doesNotContain("two standards");
  }

  @Test
  void the_working_shows_the_geometry_that_was_used() {
    String mixed = mating("NPT 1/4 male", "G 1/4 female").working().toText();
    assertThat(mixed).contains("1/4-18 NPT male into G 1/4-19 female").contains("jams");
    String sealed = mating("R 1/4 male", "Rp 1/4 female").working().toText();
    assertThat(sealed).contains("seals on the thread").contains("turns by hand");
    String barb = mating("3/8 in barb", "3/8 in hose").working().toText();
    assertThat(barb).contains("holds with a clamp");
    assertThat(mating("G 1/2 male", "G 1/2 female").inWords())
        .startsWith("G 1/2 male and G 1/2 female: seals on a face");
  }

  @ParameterizedTest
  @EnumSource(MatingVerdict.class)
  void a_verdict_reads_as_a_sentence(MatingVerdict verdict) {
    assertThat(verdict.label()).isNotBlank();
    assertThat(verdict.isSound()).isEqualTo(verdict.name().matches("SEALS_.*|HOLDS_.*|LOCKS_.*"));
  }

  static Stream<Row> engagements() {
    return Rows.of(MatingTest.class, "thread_engagement.csv");
  }

  @ParameterizedTest(name = "{0} {index}")
  @MethodSource("engagements")
  void hand_tight_and_wrench_turns_agree_with_the_published_ones(Row row) {
    boolean npt = row.text("family").equals("NPT");
    String size = row.text("size");
    Engagement engagement = mating(
            size + (npt ? " NPT male" : " R male"), size + (npt ? " NPT female" : " Rc female"))
        .engagement()
        .orElseThrow();
    String chapter = "Threads: engagement of " + (npt ? "NPT" : "R");
    compare(chapter, row, "hand_turns", engagement.handTightTurns());
    compare(chapter, row, "wrench_turns", engagement.wrenchTurns());
    compare(chapter, row, "total_turns", engagement.totalTurns());
    compare(chapter, row, "hand_length_mm", engagement.handTightLength().millimetres());
    compare(chapter, row, "wrench_length_mm", engagement.wrenchLength().millimetres());
    compare(chapter, row, "total_length_mm", engagement.totalLength().millimetres());
    if (npt) {
      compare(chapter, row, "total_length_in", engagement.totalLength().inches());
      compare(
          chapter,
          row,
          "npt_l2_in",
          NptThread.of(NominalThreadSize.parse(size)).effectiveLength().inches());
    }
    if (row.has("trade_makeup_in")) {
      compare(
          chapter,
          row,
          "trade_makeup_in",
          engagement.workshopMakeUp().orElseThrow().inches());
      // the workshop figure is the shorter one, and never to be mixed with the other
      assertThat(engagement.workshopMakeUp().orElseThrow()).isLessThan(engagement.totalLength());
    }
  }

  private static void compare(String chapter, Row row, String column, double ours) {
    ThreadTables.compare(
        chapter + " " + row.text("size"),
        row,
        column,
        ours,
        row.halfDigit(column),
        "digits printed");
  }

  @Test
  void an_allowance_that_was_recalled_says_so() {
    Engagement engagement = mating("R 2 male", "Rp 2 female").engagement().orElseThrow();
    assertThat(engagement.wrenchSource().basis()).isEqualTo(Basis.FROM_MEMORY);
    assertThat(engagement.handTightSource().basis()).isEqualTo(Basis.STANDARD);
    assertThat(Engagement.WORKSHOP.basis()).isEqualTo(Basis.COMMON_PRACTICE);
  }

  @ParameterizedTest
  @EnumSource(NominalThreadSize.class)
  void the_workshop_chart_grows_with_the_size(NominalThreadSize size) {
    Engagement engagement = Engagement.of(NptThread.of(size));
    assertThat(engagement.workshopMakeUp().isPresent())
        .isEqualTo(size != NominalThreadSize.ONE_SIXTEENTH);
    engagement
        .workshopMakeUp()
        .ifPresent(length -> assertThat(length).isLessThan(engagement.totalLength()));
  }

  static Stream<Row> mixups() {
    return Rows.of(MatingTest.class, "npt_bsp_mixups.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("mixups")
  void npt_and_bsp_of_one_name_meet_as_the_model_says(Row row) {
    NominalThreadSize size = NominalThreadSize.parse(row.text("size"));
    NptThread npt = NptThread.of(size);
    BsppThread g = BsppThread.of(size);
    BsptThread r = BsptThread.of(size);
    ThreadMismatch a = new ThreadMismatch(npt, g);
    ThreadMismatch b = new ThreadMismatch(r, npt);
    mixed(row, "npt_tpi", npt.threadsPerInch());
    mixed(row, "bsp_tpi", g.threadsPerInch());
    mixed(row, "npt_pitch_mm", npt.pitch().millimetres());
    mixed(row, "bsp_pitch_mm", 25.4 / g.threadsPerInch());
    mixed(row, "pitch_diff_mm", a.pitchDifference().millimetres());
    mixed(row, "pitch_error_4_threads_mm", 4.0 * Math.abs(a.pitchDifference().millimetres()));
    mixed(row, "pitch_error_10_threads_mm", 10.0 * Math.abs(a.pitchDifference().millimetres()));
    double nptFirst = npt.firstThreadCrestDiameter().millimetres();
    double nptLast = npt.pipeDiameter().millimetres();
    double rFirst = r.section(Gender.MALE, ThreadTables.END).major().millimetres();
    double major = g.majorDiameter().millimetres();
    mixed(row, "npt_male_first_thread_od_mm", nptFirst);
    mixed(row, "npt_male_large_end_od_mm", nptLast);
    mixed(row, "bsp_major_mm", major);
    mixed(row, "bspt_male_first_thread_od_mm", rFirst);
    mixed(row, "od_diff_first_thread_npt_minus_bsp_mm", nptFirst - major);
    mixed(row, "od_diff_large_end_npt_minus_bsp_mm", nptLast - major);
    mixed(
        row,
        "pitch_dia_diff_at_gauge_plane_npt_minus_bsp_mm",
        npt.pitchDiameterAtHandTight().millimetres() - g.pitchDiameter().millimetres());
    mixed(row, "a_pitch_clearance_mm", a.pitchClearance().millimetres());
    mixed(row, "a_crest_clearance_mm", a.crestClearance().millimetres());
    mixed(row, "a_est_turns_basic", a.turns().orElseThrow());
    mixed(row, "a_est_turns_max_truncation", a.turnsWithCutCrests().orElseThrow());
    mixed(row, "b_pitch_clearance_mm", b.pitchClearance().millimetres());
    mixed(row, "b_root_clearance_mm", b.rootClearance().millimetres());
    mixed(row, "b_est_turns_basic", b.turns().orElseThrow());
    mixed(row, "b_est_turns_max_truncation", b.turnsWithCutCrests().orElseThrow());
    assertThat(a.isSamePitch()).isEqualTo(row.text("same_tpi").equals("yes"));
    assertThat(a.verdict()).as(a.inWords()).isEqualTo(verdict(row.text("a_npt_male_in_g_female")));
    assertThat(b.verdict()).as(b.inWords()).isEqualTo(verdict(row.text("b_r_male_in_npt_female")));
  }

  /** Three decimals of a difference of two rounded diameters in the table, hence the half digit more. */
  private static void mixed(Row row, String column, double ours) {
    ThreadTables.compare(
        "Threads: NPT and BSP mixed up",
        row,
        column,
        ours,
        row.halfDigit(column) + 0.00001,
        "digits printed, and the rounding of ties");
  }

  private static MatingVerdict verdict(String words) {
    if (words.startsWith("no start")) {
      return MatingVerdict.DOES_NOT_FIT;
    }
    return words.toLowerCase(Locale.ROOT).matches("(starts, jams|starts only).*")
        ? MatingVerdict.STARTS_AND_JAMS
        : MatingVerdict.NOT_TO_BE_RELIED_ON;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("mixups")
  void the_working_of_a_mix_up_can_be_worked_again(Row row) {
    NominalThreadSize size = NominalThreadSize.parse(row.text("size"));
    NptThread npt = NptThread.of(size);
    for (ThreadMismatch mix : new ThreadMismatch[] {
      new ThreadMismatch(npt, BsppThread.of(size)),
      new ThreadMismatch(BsptThread.of(size), npt),
      new ThreadMismatch(npt, BsptThread.of(size)),
      new ThreadMismatch(BsppThread.of(size), npt)
    }) {
      Pencil.check(mix);
      Completeness.check(mix);
      assertThat(mix.working().toText()).contains("never relied on to seal");
      assertThat(mix.verdict().isSound()).isFalse();
    }
  }

  @Test
  void two_parallel_threads_of_one_pitch_run_in_all_the_way() {
    ThreadMismatch mix = new ThreadMismatch(
        NpsmThread.of(NominalThreadSize.ONE_HALF), BsppThread.of(NominalThreadSize.ONE_HALF));
    assertThat(mix.turns()).isEmpty();
    assertThat(mix.turnsWithCutCrests()).isEmpty();
    assertThat(mix.verdict()).isEqualTo(MatingVerdict.NOT_TO_BE_RELIED_ON);
    assertThat(mix.inWords()).contains("all the way");
    ThreadMismatch other = new ThreadMismatch(
        NpsmThread.of(NominalThreadSize.ONE), BsppThread.of(NominalThreadSize.ONE));
    assertThat(other.turns()).isPresent();
    assertThat(other.working().steps()).hasSize(2);
  }

  /** E1 less d2 is −0.021 mm at size 1/2: no start at basic size, but class B lets G be 0.284 mm smaller. */
  @Test
  void a_pair_that_starts_only_when_loose_is_not_called_one_that_does_not_start() {
    ThreadMismatch half = new ThreadMismatch(
        BsppThread.of(NominalThreadSize.ONE_HALF), NptThread.of(NominalThreadSize.ONE_HALF));
    assertThat(half.turns()).hasValue(0.0);
    assertThat(half.startsAtTheLimits()).isTrue();
    assertThat(half.verdict()).isEqualTo(MatingVerdict.STARTS_AND_JAMS);
    assertThat(half.inWords()).contains("loose pieces");
    ThreadMismatch eighth = new ThreadMismatch(
        NptThread.of(NominalThreadSize.ONE_EIGHTH), BsppThread.of(NominalThreadSize.ONE_EIGHTH));
    assertThat(eighth.startsAtTheLimits()).isFalse();
    assertThat(eighth.inWords()).contains("does not start").contains("0.09 mm");
  }

  @Test
  void equal_ends_mate_equally() {
    Mating mating = mating("1/4 NPT male", "1/4 NPT female");
    assertThat(mating("1/4 MNPT", "1/4 FIP")).isEqualTo(mating).hasSameHashCodeAs(mating);
    assertThat(mating("1/4 NPT female", "1/4 NPT male")).isNotEqualTo(mating);
    assertThat(mating("3/8 NPT male", "3/8 NPT female")).isNotEqualTo(mating);
    assertThat(mating).hasToString(mating.inWords());
    Engagement engagement = mating.engagement().orElseThrow();
    assertThat(engagement)
        .isEqualTo(Engagement.of(NptThread.of(NominalThreadSize.ONE_QUARTER)))
        .hasSameHashCodeAs(Engagement.of(NptThread.of(NominalThreadSize.ONE_QUARTER)))
        .isNotEqualTo(Engagement.of(NptThread.of(NominalThreadSize.ONE_EIGHTH)));
    assertThat(engagement.inWords(UnitSystem.US)).endsWith(" in in all");
  }

  @Test
  void a_thread_that_is_only_female_cannot_be_the_male_one() {
    assertThat(catchThrowable(() -> new ThreadMismatch(
            RpThread.of(NominalThreadSize.ONE), NptThread.of(NominalThreadSize.ONE))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("gender of Rp must be female");
  }

  @Test
  void whether_a_pair_is_sound_is_told_without_reasons_as_with_them() {
    List<End> ends = new ArrayList<>(List.of(
        End.parse("10 mm hose"),
        End.parse("3/8 in hose"),
        End.parse("3/8 in barb"),
        End.parse("10 mm barb")));
    for (ThreadFamily family : ThreadFamily.values()) {
      for (String size : List.of("1/4", "3/8", "1")) {
        for (Gender gender : Gender.values()) {
          try {
            ends.add(new End.Threaded(family, NominalThreadSize.parse(size), gender));
          } catch (IllegalArgumentException noSuchThread) {
            assertThat(noSuchThread).hasMessageContaining(family.symbol());
          }
        }
      }
    }
    assertThat(ends).hasSizeGreaterThan(40);
    for (End one : ends) {
      for (End other : ends) {
        assertThat(Mating.isSound(one, other))
            .as(one.label() + ", " + other.label())
            .isEqualTo(Mating.of(one, other).verdict().isSound());
      }
    }
  }
}
