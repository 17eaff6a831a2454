package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.airfit.ReliabilityTable;
import org.airfit.thread.ThreadIdentification.SettlingReading;
import org.airfit.thread.ThreadPieces.Kind;
import org.airfit.thread.ThreadPieces.Piece;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/**
 * How often the judgement about a thread is right, over pieces made from the tables of the standards and read at a bench
 * with mistakes; neither is the model that the judgement assumes. {@code -Dairfit.threads=20000} draws more.
 */
class ThreadReliabilityTest {

  private static final int DRAWN = Integer.getInteger("airfit.threads", 1500);

  private static final double CAREFUL = 0.0;
  private static final double MISREAD = 0.03;
  private static final double WORN = 0.3;

  private static final List<List<String>> TABLE = new ArrayList<>();

  /** Reads one piece and judges it. */
  private interface Protocol {
    ThreadIdentification judge(ThreadWorkbench bench, Piece piece, Random random);
  }

  private static int many(Random random) {
    return ThreadFit.ENOUGH_PITCHES + random.nextInt(4);
  }

  private static ThreadReadings counted(ThreadWorkbench bench, Piece piece, Random random) {
    return bench.count(bench.twoDiameters(piece), piece, many(random));
  }

  private static final Protocol COUNTED =
      (bench, piece, random) -> ThreadIdentification.of(counted(bench, piece, random));

  private static final Protocol FOLLOWED = (bench, piece, random) -> {
    ThreadReadings readings = counted(bench, piece, random);
    ThreadIdentification answer = ThreadIdentification.of(readings);
    return answer.settlingReadings().contains(SettlingReading.FLANK_ANGLE)
        ? ThreadIdentification.of(bench.flanks(readings, piece))
        : answer;
  };

  private static final Protocol COUNTED_AND_LEAF = (bench, piece, random) ->
      ThreadIdentification.of(bench.leaf(counted(bench, piece, random), piece));

  private static final Protocol FEW_AND_LEAF = (bench, piece, random) -> ThreadIdentification.of(
      bench.leaf(bench.count(bench.twoDiameters(piece), piece, 3 + random.nextInt(2)), piece));

  private static final Protocol LEAF = (bench, piece, random) ->
      ThreadIdentification.of(bench.leaf(bench.twoDiameters(piece), piece));

  private static final Protocol WRONG_LEAF = (bench, piece, random) ->
      ThreadIdentification.of(bench.wrongLeaf(bench.twoDiameters(piece), piece));

  private static final Protocol DIAMETERS =
      (bench, piece, random) -> ThreadIdentification.of(bench.twoDiameters(piece));

  /** Counts of answers. */
  private static final class Tally {
    private int drawn;
    private int pipe;
    private int foreign;
    private int wrong;
    private int stated;
    private int right;
    private double promised;

    void add(ThreadIdentification answer, Kind kind) {
      drawn++;
      pipe += answer.identified().isPresent() ? 1 : 0;
      foreign += answer.foreign().isPresent() ? 1 : 0;
      ThreadCandidate best = answer.candidates().get(0);
      boolean isRight = best.thread().label().equals(kind.label());
      boolean firm = answer.identified().isPresent() || answer.foreign().isPresent();
      wrong += firm && !isRight ? 1 : 0;
      if (best.probability() >= 0.9 && best.probability() <= 0.99) {
        stated++;
        promised += best.probability();
        right += isRight ? 1 : 0;
      }
    }

    double firmShare() {
      return (double) (pipe + foreign) / drawn;
    }

    double pipeShare() {
      return (double) pipe / drawn;
    }

    /** Of all firm answers. */
    double wrongShare() {
      return pipe + foreign == 0 ? 0.0 : (double) wrong / (pipe + foreign);
    }

    double promisedShare() {
      return promised / stated;
    }

    double rightShare() {
      return (double) right / stated;
    }

    List<String> row(String pieces, String readings) {
      return List.of(
          pieces,
          readings,
          Integer.toString(drawn),
          percent(pipeShare()),
          percent((double) foreign / drawn),
          wrong + " (" + percent(wrongShare()) + ")",
          stated < 30 ? "-" : percent(promisedShare()) + " / " + percent(rightShare()));
    }

    private static String percent(double share) {
      return String.format(Locale.ROOT, "%.1f %%", 100.0 * share);
    }
  }

  /** Which threads are drawn. */
  private interface Stock {
    Kind draw(Random random);
  }

  private static Stock of(List<Kind> kinds) {
    return random -> kinds.get(random.nextInt(kinds.size()));
  }

  private static final Stock COMMON = of(ThreadPieces.common());
  private static final Stock RARE = of(ThreadPieces.rare());
  private static final Stock FOREIGN = of(ThreadPieces.foreign());

  /** What a counter sees: foreign threads one time in five, the less usual families one time in twenty. */
  private static final Stock COUNTER = random -> random.nextInt(5) == 0
      ? FOREIGN.draw(random)
      : random.nextInt(16) == 0 ? RARE.draw(random) : COMMON.draw(random);

  private static Tally run(
      String pieces, String readings, Stock stock, double mistakes, Protocol protocol) {
    return run(DRAWN, pieces, readings, stock, mistakes, protocol);
  }

  private static Tally run(
      int drawn, String pieces, String readings, Stock stock, double mistakes, Protocol protocol) {
    Random random = new Random(20_261_128L);
    ThreadWorkbench bench = new ThreadWorkbench(random, mistakes);
    Tally tally = new Tally();
    for (int i = 0; i < drawn; i++) {
      Kind kind = stock.draw(random);
      Piece piece = ThreadPieces.make(random, kind, mistakes == CAREFUL ? 0.0 : WORN);
      tally.add(protocol.judge(bench, piece, random), kind);
    }
    TABLE.add(tally.row(pieces, readings));
    return tally;
  }

  @AfterAll
  static void write() {
    TABLE.sort((a, b) -> (a.get(0) + a.get(1)).compareTo(b.get(0) + b.get(1)));
    ReliabilityTable.write(
        "threads",
        List.of(
            "threads",
            "readings",
            "drawn",
            "firm: pipe thread",
            "firm: foreign thread",
            "firm and wrong (of firm)",
            "stated 90 to 99 %: stated / right"),
        TABLE);
  }

  private static final String NEW = "NPT, R, Rc, G; new";
  private static final String USED = "NPT, R, Rc, G; 3 of 10 worn";

  @Test
  void four_genuine_threads_in_five_with_a_counted_pitch_end_firm() {
    Tally tally = run(NEW, "careful: two diameters, 5 to 8 pitches", COMMON, CAREFUL, COUNTED);
    assertThat(tally.firmShare()).isGreaterThanOrEqualTo(0.80);
    assertThat(tally.wrongShare()).isLessThanOrEqualTo(0.005);
  }

  @Test
  void more_end_firm_when_the_reading_asked_for_is_taken() {
    Tally tally = run(NEW, "careful: the same, and flanks if asked for", COMMON, CAREFUL, FOLLOWED);
    assertThat(tally.firmShare()).isGreaterThanOrEqualTo(0.90);
    assertThat(tally.wrongShare()).isLessThanOrEqualTo(0.005);
  }

  @Test
  void firm_answers_stay_right_with_mistakes_and_wear() {
    for (Tally tally : List.of(
        run(USED, "3 % mistakes: two diameters, 5 to 8 pitches", COMMON, MISREAD, COUNTED),
        run(USED, "3 % mistakes: the same, and a leaf", COMMON, MISREAD, COUNTED_AND_LEAF),
        run(USED, "3 % mistakes: the same, and flanks if asked for", COMMON, MISREAD, FOLLOWED),
        run(USED, "3 % mistakes: 3 or 4 pitches, and a leaf", COMMON, MISREAD, FEW_AND_LEAF))) {
      assertThat(tally.wrongShare()).isLessThanOrEqualTo(0.01);
      assertThat(tally.pipe).isGreaterThan(DRAWN / 2);
    }
  }

  @Test
  void a_leaf_is_firm_only_where_the_diameters_tell_the_same_pitch() {
    Tally tally = run(USED, "3 % mistakes: two diameters, a leaf", COMMON, MISREAD, LEAF);
    assertThat(tally.wrongShare()).isLessThanOrEqualTo(0.01);
    assertThat(tally.firmShare()).isGreaterThan(0.3);
    // of all leaves that are misread, not of three in a hundred
    Tally misread = run(NEW, "two diameters, a leaf that is misread", COMMON, CAREFUL, WRONG_LEAF);
    assertThat((double) misread.wrong / misread.drawn).isLessThanOrEqualTo(0.01);
  }

  @Test
  void two_diameters_alone_are_never_firm() {
    assertThat(
            run(NEW, "careful: two diameters alone", COMMON, CAREFUL, DIAMETERS).firmShare())
        .isZero();
  }

  @Test
  void the_less_usual_families_are_not_taken_for_the_usual_ones() {
    Tally tally = run(
        "NPSM, NPSC, Rp; new", "careful: two diameters, 5 to 8 pitches", RARE, CAREFUL, COUNTED);
    assertThat((double) tally.wrong / tally.drawn).isLessThanOrEqualTo(0.01);
  }

  @Test
  void foreign_threads_are_not_called_pipe_threads() {
    String foreign = "metric, unified, odd G, hose";
    Tally careful =
        run(foreign + "; new", "careful: two diameters, 5 to 8 pitches", FOREIGN, CAREFUL, COUNTED);
    Tally used = run(
        foreign + "; 3 of 10 worn",
        "3 % mistakes: the same, and a leaf",
        FOREIGN,
        MISREAD,
        COUNTED_AND_LEAF);
    Tally few = run(
        foreign + "; 3 of 10 worn",
        "3 % mistakes: 3 or 4 pitches, and a leaf",
        FOREIGN,
        MISREAD,
        FEW_AND_LEAF);
    for (Tally tally : List.of(careful, used, few)) {
      assertThat(tally.pipeShare()).isLessThanOrEqualTo(0.005);
    }
    assertThat(careful.firmShare()).isGreaterThanOrEqualTo(0.9);
    Tally strange = run(
        10 * DRAWN, // so few are firm that more must be drawn to tell how many
        "threads of no standard",
        "3 % mistakes: two diameters, 5 to 8 pitches",
        ThreadPieces::strange,
        MISREAD,
        COUNTED);
    // a thread that happens to have the pitch and the crests of a pipe thread looks like one
    assertThat(strange.pipeShare()).isLessThanOrEqualTo(0.005);
  }

  @Test
  void what_is_stated_at_90_to_99_percent_is_right_that_often() {
    for (Tally tally : List.of(
        run(
            "all, as a counter sees them; new",
            "careful: two diameters, 5 to 8 pitches",
            COUNTER,
            CAREFUL,
            COUNTED),
        run(
            "all, as a counter sees them; 3 of 10 worn",
            "3 % mistakes: 3 or 4 pitches, and a leaf",
            COUNTER,
            MISREAD,
            FEW_AND_LEAF),
        run(
            "all, as a counter sees them; 3 of 10 worn",
            "3 % mistakes: two diameters, a leaf",
            COUNTER,
            MISREAD,
            LEAF))) {
      assertThat(tally.stated).isGreaterThan(50);
      // three points, and the chance of so few answers: three standard deviations
      double chance = 3.0 * Math.sqrt(0.05 * 0.95 / tally.stated);
      assertThat(Math.abs(tally.rightShare() - tally.promisedShare()))
          .isLessThanOrEqualTo(0.03 + (DRAWN < 10_000 ? chance : 0.0));
    }
  }
}
