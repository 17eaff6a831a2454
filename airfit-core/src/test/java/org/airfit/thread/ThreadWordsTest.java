package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** Whole sentences; the chances in them are those of the candidates. */
class ThreadWordsTest {

  private static final String NONE =
      "none of the known threads fits the readings as they were taken; ";
  private static final String METRIC = "check: is it metric or a thread of another kind? ";
  private static final String COUNTED =
      " were threads counted as pitches (over six threads there are five pitches)?";

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static ThreadReadings quarterNpt() {
    return ThreadReadings.ofMale(mm(13.25)).withLastCrest(mm(13.71));
  }

  private static String words(ThreadReadings readings) {
    return ThreadIdentification.of(readings).inWords();
  }

  /** The threads with a chance of one in a hundred or more, each with it. */
  private static String contenders(ThreadIdentification answer) {
    return answer.candidates().stream()
        .filter(each -> each.probability() >= 0.01)
        .map(each -> each.thread().label() + " (" + each.percent() + ")")
        .collect(Collectors.joining(", "));
  }

  @Test
  void a_foreign_thread_is_named_with_its_use_and_the_thread_it_is_taken_for() {
    ThreadIdentification port = ThreadIdentification.of(
        ThreadReadings.ofMale(mm(13.9), mm(7.5), 5).withLastCrest(mm(13.9)));
    assertThat(port.inWords())
        .isEqualTo("looks like M14x1.5 male (" + port.candidates().get(0).percent()
            + "), a metric thread, not a pipe thread (metric port or 24° cone fitting): it does not"
            + " mate with 1/4 NPT or any other thread of an air part, even where it goes in for"
            + " some turns");
    // 7.9 mm: G 1/16 is up to 7.723 mm, NPT 1/16 up to 7.70, R 1/4, nearer by its pitch, from 12.7
    // mm
    ThreadIdentification screw = ThreadIdentification.of(
        ThreadReadings.ofMale(mm(7.9)).withPitches(mm(6.25), 5).withLastCrest(mm(7.9)));
    assertThat(screw.inWords())
        .isEqualTo("looks like M8x1.25 male (" + screw.candidates().get(0).percent()
            + "), a metric thread, not a pipe thread: it does not mate with G 1/16 or any other"
            + " thread of an air part, even where it goes in for some turns");
  }

  @Test
  void nothing_that_fits_is_told_with_the_slip_what_to_check_and_the_nearest() {
    assertThat(words(ThreadReadings.ofMale(mm(18.4), mm(7.5), 5)))
        .isEqualTo(NONE + "it would be M20x1.5 female if outside and inside are swapped; " + METRIC
            + "are the diameters swapped, outside for inside?" + COUNTED
            + "; the nearest is 3/8 NPSM male, which has 18 threads per inch and a first crest of "
            + NpsmThread.of(org.airfit.quantity.NominalThreadSize.THREE_EIGHTHS)
                .firstCrest(Gender.MALE));
    assertThat(words(ThreadReadings.ofFemale(mm(150.0))))
        .isEqualTo(NONE + METRIC
            + "are the diameters swapped, outside for inside?; the nearest is G 4 female, which has"
            + " 11 threads per inch and a first crest of 110.072 to 110.712 mm");
    assertThat(words(quarterNpt().withPitches(mm(7.06), 6).withTaperSeen(true)))
        .startsWith(NONE + "it would be 1/4 NPT male if threads were counted as pitches")
        .contains(METRIC + "are the diameters swapped, first for last or outside for inside?"
            + COUNTED + "; the nearest is ");
    assertThat(words(ThreadReadings.ofMale(mm(20.9)).withThreadsPerInch(20)))
        .contains(METRIC
            + "are the diameters swapped, outside for inside? was the leaf of the gauge misread?;"
            + " the nearest is ");
  }

  @Test
  void a_doubt_names_all_that_it_may_be_and_the_reading_that_settles_it() {
    ThreadIdentification bore =
        ThreadIdentification.of(ThreadReadings.ofFemale(mm(18.7)).withPitch(mm(1.82), mm(0.02)));
    assertThat(bore.inWords())
        .isEqualTo("ambiguous between " + contenders(bore)
            + "; count five pitches or more and measure the length over them, which tells the"
            + " pitch; measure the crest of the last full thread, which tells taper from parallel;"
            + " look at the flanks with a thread gauge: 60° is NPT, NPSC, NPSM, metric or unified,"
            + " 55° is R, Rp or G");
    ThreadIdentification metric =
        ThreadIdentification.of(ThreadReadings.ofMale(mm(16.0)).withLastCrest(mm(15.9)));
    assertThat(metric.unknownProbability()).isGreaterThan(0.01);
    assertThat(metric.inWords())
        .isEqualTo("ambiguous between " + contenders(metric) + " and none of these ("
            + org.airfit.internal.Digits.percent(metric.unknownProbability())
            + "); none of them is a pipe thread of air parts; count five pitches or more and"
            + " measure the length over them, which tells the pitch");
    ThreadIdentification alone =
        ThreadIdentification.of(ThreadReadings.ofMale(mm(13.6)).withThreadsPerInch(18.0));
    assertThat(alone.inWords())
        .isEqualTo("likely " + contenders(alone) + " of the threads compared, which these"
            + " readings do not prove; the readings fit 1/4 NPT male"
            + " if the diameter was not taken at the first full thread; count five pitches or more"
            + " and measure the length over them, which tells the pitch; measure the first full"
            + " thread at the open end again; measure the crest of the last full thread, which"
            + " tells taper from parallel");
  }

  /** The last two lines before the answer: a chance, with the numbers it is made of. */
  private static String withoutChance(String text) {
    int from = text.indexOf("  Chance ");
    int to = text.indexOf("  Answer: ");
    return text.substring(0, from) + text.substring(to);
  }

  /**
   * NPT 1/4: p = 25.4/18; crest 13.255 mm of E0 + h, ± 0.088 a turn, 0.156 cut; 2.94 is the score of 0.005/3. 12.823
   * is 13.011 − 0.1 − 2.935 × 0.03, and 13.519 is 13.343 + 0.088 + 2.935 × 0.03.
   */
  @Test
  void the_working_tells_each_reading_against_the_likeliest_thread() {
    ThreadIdentification answer =
        ThreadIdentification.of(quarterNpt().withPitches(mm(7.06), 5).withThreadsPerInch(18.0));
    assertThat(withoutChance(answer.working(UnitSystem.SI).toText()))
        .isEqualTo("Male thread from first crest 13.25 mm, last 13.71 mm, pitch 1.412 mm (17.99"
            + " threads per inch) counted over 5, leaf 18 threads per inch\n"
            + "  Pitch against 1/4 NPT male\n"
            + "    z = (P − p) / u\n"
            + "      = ((1.412 mm) − (1.41111 mm)) / (0.01 mm)\n"
            + "      = 0.089\n"
            + "    [ASME B1.20.1-2013 (standard)]\n"
            + "  Counted over 5: enough.\n"
            + "  The leaf has a pitch of 1.411 mm, which is 0.0 % off; a leaf fits within 2 %, and"
            + " 3.0 % of leaves are taken to be misread (our choice).\n"
            + "  The first crest of 1/4 NPT male may measure 13.011 to 13.343 mm by its standard;"
            + " with one turn along the cone, wear of up to 0.1 mm and 2.94 uncertainties of the"
            + " reading, 12.823 to 13.519 mm; read 13.25 mm, which fits.\n"
            + "  The last crest differs from the first by 0.46 mm; a taper thread grows 1 mm on"
            + " 16.\n"
            + "  Answer: 1/4 NPT male (> 99.9 %). None of these: < 0.1 %.\n");
    assertThat(withoutChance(answer.working(UnitSystem.US).toText()))
        .isEqualTo("Male thread from first crest 0.5217 in, last 0.5398 in, pitch 0.05559 in (17.99"
            + " threads per inch) counted over 5, leaf 18 threads per inch\n"
            + "  Pitch against 1/4 NPT male\n"
            + "    z = (P − p) / u\n"
            + "      = ((0.0555906 in) − (0.0555556 in)) / (0.0003937 in)\n"
            + "      = 0.089\n"
            + "    [ASME B1.20.1-2013 (standard)]\n"
            + "  Counted over 5: enough.\n"
            + "  The leaf has a pitch of 0.05556 in, which is 0.0 % off; a leaf fits within 2 %, and"
            + " 3.0 % of leaves are taken to be misread (our choice).\n"
            + "  The first crest of 1/4 NPT male may measure 0.5122 to 0.5253 in by its standard;"
            + " with one turn along the cone, wear of up to 0.0039 in and 2.94 uncertainties of the"
            + " reading, 0.5048 to 0.5322 in; read 0.5217 in, which fits.\n"
            + "  The last crest differs from the first by 0.0181 in; a taper thread grows 1 in on"
            + " 16.\n"
            + "  Answer: 1/4 NPT male (> 99.9 %). None of these: < 0.1 %.\n");
  }

  /** G 1/4 outside, 12.907 to 13.157 mm; two readings: 2.81 uncertainties; the leaf of 18 is 5.6 % off 19. */
  @Test
  void a_parallel_thread_has_no_cone_and_a_pitch_read_otherwise_is_the_step() {
    ThreadReadings other = ThreadReadings.ofMale(mm(13.05))
        .withPitch(mm(1.35), mm(0.01))
        .withFlankAngle(55.0, 0.5)
        .withTaperSeen(false);
    ThreadIdentification answer = ThreadIdentification.of(other);
    assertThat(answer.working().toText())
        .contains("= ((1.35 mm) − (1.3368 mm)) / (0.01 mm)\n      = 1.3\n")
        .contains("  The first crest of G 1/4 male may measure 12.907 to 13.157 mm by its standard;"
            + " with wear of up to 0.1 mm and 2.94 uncertainties of the reading, 12.719 to 13.245"
            + " mm; read 13.05 mm, which fits.\n")
        .doesNotContain("Counted over")
        .doesNotContain("The leaf")
        .doesNotContain("last crest");
    String both = ThreadIdentification.of(other.withPitches(mm(5.36), 4).withThreadsPerInch(18.0))
        .working()
        .toText();
    assertThat(both)
        .contains("= ((1.34 mm) − (1.33684 mm)) / (0.0125 mm)\n      = 0.25\n")
        .contains("  Counted over 4: five or more would be enough by themselves.\n")
        .contains("  Read in another way: 1.350 mm.\n")
        .contains("  The leaf has a pitch of 1.411 mm, which is 5.6 % off; a leaf");
  }

  @Test
  void a_reading_that_does_not_fit_is_called_so() {
    assertThat(ThreadIdentification.of(ThreadReadings.ofFemale(mm(150.0)))
            .working()
            .toText())
        .startsWith("Female thread from bore at the mouth 150 mm\n")
        .contains("read 150.00 mm, which does not fit.\n")
        .contains("None of these: > 99.9 %.");
    assertThat(ThreadIdentification.of(
                ThreadReadings.ofFemale(mm(0.2)).withDiameterUncertainty(mm(10.0)))
            .working()
            .toText())
        .contains("uncertainties of the reading, 0.000 to ");
  }
}
