package org.airfit.joint;

import java.util.Optional;
import org.airfit.source.Source;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;

/**
 * Threads that only pull, with the forms that seal beside them: against each other, and against pipe threads.
 *
 * <p>Ends of one form and one thread seal. Where only the thread is the same it goes together and leaks; where the
 * threads differ, their diameters and pitches tell how far it goes.
 */
final class FormPairs {

  private static final Source GEOMETRY =
      Source.derived("limits of the threads (ISO 965-1, ASME B1.1, ISO 228-1, ASME B1.20.1)");

  private static final Source SHARED = Source.derived(
      "tables of threads of flares and ports; a glossary of the trade on flare fittings");

  private FormPairs() {}

  /** Two ends with forms, in either order. */
  static Pairing of(End.Formed one, End.Formed other) {
    if (one.form() == SealForm.WATER || other.form() == SealForm.WATER) {
      return water(one, other);
    }
    if (one.gender() == other.gender()) {
      return sameGender(one.gender(), one.form().source());
    }
    End.Formed male = one.gender() == Gender.MALE ? one : other;
    End.Formed female = one.gender() == Gender.MALE ? other : one;
    if (!isOneThread(male, female)) {
      return ThreadGap.between(male.thread(), female.thread())
          .map(gap -> gap.pairing(male.label(), female.label(), GEOMETRY))
          .orElseGet(FormPairs::notWorkedOut);
    }
    if (seals(male, female)) {
      return sealing(male, female);
    }
    return male.form() == SealForm.CONE_24 && female.form() == SealForm.CONE_24
        ? cone24(male)
        : formsDiffer(male, female);
  }

  /** A form and a pipe thread, in either order. */
  static Pairing of(End.Formed formed, End.Threaded pipe) {
    if (formed.form() == SealForm.WATER) {
      return water(formed, pipe);
    }
    if (formed.gender() == pipe.gender()) {
      return sameGender(pipe.gender(), pipe.family().source());
    }
    if (formed.thread() instanceof ThreadDesignation g) {
      return ofG(formed, new End.Threaded(g), pipe);
    }
    boolean male = formed.gender() == Gender.MALE;
    return (male
            ? ThreadGap.between(formed.thread(), pipe.thread())
            : ThreadGap.between(pipe.thread(), formed.thread()))
        .map(gap -> gap.pairing(
            male ? formed.label() : pipe.label(), male ? pipe.label() : formed.label(), GEOMETRY))
        .orElseGet(FormPairs::notWorkedOut);
  }

  /** Whether {@link #of} finds a joint to build. */
  static boolean isSound(End.Formed one, End.Formed other) {
    if (one.gender() == other.gender() || !isOneThread(one, other)) {
      return false;
    }
    return one.gender() == Gender.MALE ? seals(one, other) : seals(other, one);
  }

  /** Whether {@link #of} finds a joint to build. */
  static boolean isSound(End.Formed formed, End.Threaded pipe) {
    return formed.thread() instanceof ThreadDesignation g
        && g.size() == pipe.size()
        && g.gender() != pipe.gender()
        && pipe.family() == ThreadFamily.BSPP;
  }

  private static boolean isOneThread(End.Formed one, End.Formed other) {
    return ThreadNames.of(one.thread()).equals(ThreadNames.of(other.thread()));
  }

  private static boolean seals(End.Formed male, End.Formed female) {
    return switch (male.form()) {
      case FLARE_37, FLARE_45, INVERTED_FLARE, O_RING -> male.form() == female.form();
      case WASHER, RING -> female.form() == SealForm.FLAT_FACE;
      case CONE_24, FLAT_FACE, WATER -> false;
    };
  }

  private static Pairing sameGender(Gender gender, Source source) {
    return new Pairing(MatingVerdict.DOES_NOT_FIT, "Both are " + gender.label() + ".", source);
  }

  private static Pairing notWorkedOut() {
    return new Pairing(
        MatingVerdict.NOT_TO_BE_RELIED_ON,
        "How far it goes was not worked out, and it is a pair of no standard.",
        GEOMETRY);
  }

  private static Pairing sealing(End.Formed male, End.Formed female) {
    SealForm form = male.form();
    String why = switch (form) {
      case FLARE_37, FLARE_45, INVERTED_FLARE ->
        "Both have the " + form.label() + " and the thread " + ThreadNames.of(male.thread())
            + TubeThread.ofThread(form, ThreadNames.of(male.thread()))
                .map(row -> ", for tube of " + row.tube() + " in")
                .orElse("")
            + ": the nut presses metal cone on metal cone.";
      case O_RING ->
        "The O-ring on the male end seals in the cone at the mouth of the port; the thread only holds it in place.";
      case RING ->
        "The ring on the male end seals on the flat face of the port; the thread only holds it in place.";
      default ->
        "A sealing washer between the shoulder of the male end and the flat face seals; the thread only holds it"
            + " in place.";
    };
    return new Pairing(MatingVerdict.SEALS_ON_FACE, why, sourceOf(male, female));
  }

  private static Source sourceOf(End.Formed male, End.Formed female) {
    return TubeThread.ofThread(male.form(), ThreadNames.of(male.thread()))
        .map(TubeThread::source)
        .orElse(female.form().source());
  }

  private static Pairing cone24(End.Formed male) {
    return new Pairing(
        MatingVerdict.NOT_JUDGED,
        "Both are 24° cones with " + ThreadNames.of(male.thread())
            + ", but the same thread serves a light and a heavy series with tubes of different sizes, and the table"
            + " of ISO 8434-1 was not seen. They seal only if tube and series are the same: measure the tube.",
        SealForm.CONE_24.source());
  }

  /** The thread is the same: it runs in, and nothing seals. */
  private static Pairing formsDiffer(End.Formed male, End.Formed female) {
    SealForm inside = female.form();
    SealForm outside = male.form();
    String why = outside.isCone() && inside.isCone()
        ? "the cones do not: " + outside.label() + " meets " + inside.label()
            + " on a line, which leaks under pressure and spoils the cones."
        : "the male part has " + has(outside) + " and the female part " + has(inside)
            + ", so that nothing seals.";
    return new Pairing(
        MatingVerdict.NOT_TO_BE_RELIED_ON,
        "The thread " + ThreadNames.of(male.thread()) + " is the same and runs in, but " + why,
        SHARED);
  }

  private static String has(SealForm form) {
    return switch (form) {
      case FLARE_37, FLARE_45, INVERTED_FLARE, CONE_24 -> "a metal cone (" + form.label() + ")";
      case O_RING -> "an O-ring joint";
      case FLAT_FACE -> "a flat face";
      case WASHER -> "a washer for a flat face";
      case RING -> "a ring for a flat face";
      case WATER -> "a washer for water";
    };
  }

  /** G with its port or washer is judged as G; only G itself seals on a face. */
  private static Pairing ofG(End.Formed formed, End.Threaded g, End.Threaded pipe) {
    Pairing threads = ThreadPairs.of(g, pipe);
    if (threads.verdict() != MatingVerdict.SEALS_ON_FACE) {
      return threads;
    }
    String why = switch (formed.form()) {
      case RING ->
        "The ring on the male end seals on the face around the female thread, which must be flat and as wide as the"
            + " ring.";
      case WASHER ->
        "The washer seals on the face around the female thread, which must be flat and as wide as the washer.";
      default ->
        "A sealing washer between the shoulder of the male part and the flat face of the port seals; the male part"
            + " must have such a shoulder.";
    };
    return new Pairing(
        MatingVerdict.SEALS_ON_FACE,
        why + " The thread only holds the parts together.",
        formed.form().source());
  }

  /** A hose coupling for water is refused for air, also where it goes together. */
  private static Pairing water(End.Formed one, End other) {
    End.Formed hose = one.form() == SealForm.WATER ? one : (End.Formed) other;
    End far = one.form() == SealForm.WATER ? other : one;
    String name = ThreadNames.of(hose.thread());
    String why = name + " is a coupling of " + use(hose)
        + ", for water: neither coupling nor hose is made or rated for compressed air, and they burst or part.";
    boolean fits = far instanceof End.Formed formed
        && formed.form() == SealForm.WATER
        && formed.gender() != hose.gender()
        && isOneThread(hose, formed);
    return new Pairing(
        fits ? MatingVerdict.NOT_TO_BE_RELIED_ON : MatingVerdict.DOES_NOT_FIT,
        fits ? "They go together for water only. " + why : why + otherThread(hose, far),
        SealForm.WATER.source());
  }

  private static String use(End.Formed hose) {
    return ((ForeignThread) hose.thread())
        .use()
        .map(use -> use.startsWith("garden") ? "a garden hose" : "a fire hose")
        .orElse("a hose");
  }

  private static String otherThread(End.Formed hose, End far) {
    Optional<Double> pitch = far instanceof End.Threaded pipe
        ? Optional.of(pipe.thread().threadsPerInch())
        : far instanceof End.Formed formed
            ? Optional.of(formed.thread().threadsPerInch())
            : Optional.empty();
    double own = hose.thread().threadsPerInch();
    return pitch
        .filter(count -> Math.abs(count - own) > 1.0e-6)
        .map(count -> " The thread is another one too: " + ThreadGap.count(own) + " against "
            + ThreadGap.count(count) + " threads per inch.")
        .orElse("");
  }

  /** The plain end of a tube and a cone: the tube is worked first. */
  static Pairing ofPlainTube(End.Formed cone, End.TubeEnd tube) {
    String name = cone.form().label();
    boolean bare = cone.form() == SealForm.CONE_24;
    return new Pairing(
        MatingVerdict.DOES_NOT_FIT,
        "No cone holds the plain end of " + Article.with(tube.label()) + ": "
            + (bare
                ? "a cutting ring or nipple and a nut of the size of the tube belong on it."
                : "it is flared for the " + name
                    + " and held by the nut of its size, and then its end is " + Article.with(name)
                    + " too."),
        cone.form().source());
  }

  /** A hose coupling for water and an end without a thread. */
  static Pairing ofWater(End.Formed hose, End other) {
    return water(hose, other);
  }
}
