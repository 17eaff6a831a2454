package org.airfit.joint;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.joint.EndScanner.Amount;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NamedThread;
import org.airfit.thread.ThreadFamily;
import org.jspecify.annotations.Nullable;

/**
 * Reads flares, ports and studs, claws, and hose couplings for water. What may be meant in two ways is refused with the
 * question to ask.
 */
final class FormReader {

  private static final List<SealForm> FLARES = List.of(SealForm.FLARE_37, SealForm.FLARE_45);

  private final FormScanner scan;

  private FormReader(FormScanner scan) {
    this.scan = scan;
  }

  /** Reads a text; empty if it has no word of this kind; refuses with a {@link QuantityFormatException}. */
  static Optional<EndWords> read(String text) {
    if (!FormScanner.isTold(text)) {
      return Optional.empty();
    }
    FormScanner scan = FormScanner.of(text);
    // the M of "M1/2 NPT" says male
    return scan.hasStrangeWord() && !FormScanner.hasTellingWord(text)
        ? Optional.empty()
        : Optional.of(new FormReader(scan).told());
  }

  private EndWords told() {
    if (scan.has("CLAW") || scan.has("LUG")) {
      return claw();
    }
    boolean isWater = scan.has("NH") || scan.has("GHT") || scan.has("GARDEN") || scan.has("FIRE");
    if (!isWater && scan.hasStrangeWord()) {
      return pipe();
    }
    if (scan.hasStrangeWord()) {
      throw strange();
    }
    if (isWater) {
      return water();
    }
    boolean flare = scan.has("FLARE") || scan.has("JIC") || scan.has("INVERTED");
    return flare || scan.has("CONE") ? cone(flare) : ringOrFace();
  }

  private QuantityFormatException strange() {
    return scan.refused(
        scan.strangeAt(), KnownWords.notUnderstood(wordAt(scan.text(), scan.strangeAt())));
  }

  private static String wordAt(String text, int start) {
    int end = start;
    while (end < text.length() && EndScanner.isLetter(text.charAt(end))) {
      end++;
    }
    return text.substring(start, end);
  }

  private QuantityFormatException missing(String what) {
    return scan.refused(scan.text().length(), what);
  }

  private EndWords claw() {
    if (scan.hasStrangeWord()) {
      throw strange();
    }
    boolean two = scan.has("2");
    boolean four = scan.has("4");
    boolean european = scan.has("EUROPEAN");
    if ((two ? 1 : 0) + (four ? 1 : 0) + (european ? 1 : 0) > 1) {
      throw scan.refused(scan.at("CLAW"), "two heads of claw couplings at once");
    }
    if (!two && !four && !european) {
      throw scan.refused(
          scan.has("UNIVERSAL") ? scan.at("UNIVERSAL") : scan.at("CLAW"),
          (scan.has("UNIVERSAL") ? "universal is said of" : "there are")
              + " heads that do not mate: two-lug or four-lug (North American), or European?"
              + " Write \"two-lug claw\", \"four-lug claw\" or \"European claw\"");
    }
    @Nullable Amount size = scan.size();
    if (two && size != null && !scan.isMillimetres() && size.value() > 1.0) {
      throw scan.refused(size.start(), "two-lug heads end at 1 in; larger ones have four lugs");
    }
    return new EndWords.OfClaw(
        two ? ClawHead.TWO_LUG : four ? ClawHead.FOUR_LUG : ClawHead.EUROPEAN,
        size == null
            ? Optional.empty()
            : Optional.of(
                "the size was read over: it belongs to the other end of the part, heads of"
                    + " one kind are alike"));
  }

  private Gender gender() {
    boolean male = scan.has("MALE") || scan.has("STUD");
    boolean female = scan.has("FEMALE")
        || scan.has("PORT")
        || scan.has("BOSS")
        || (scan.has("ORB") && !male); // a "male ORB" is the stud that goes into one
    if (male && female) {
      throw scan.refused(
          Math.max(
              scan.has("MALE") ? scan.at("MALE") : scan.at("STUD"),
              scan.has("FEMALE") ? scan.at("FEMALE") : scan.at("PORT")),
          "male and female at once");
    }
    if (!male && !female) {
      throw missing("male or female is missing");
    }
    return male ? Gender.MALE : Gender.FEMALE;
  }

  /** A hose coupling for water: 3/4 NH is a garden hose or a fire hose, and only its threads per inch tell. */
  private EndWords water() {
    @Nullable Amount size = scan.size();
    double diameter = size == null ? 0.75 : size.value();
    boolean garden = scan.has("GARDEN") || scan.has("GHT");
    boolean fire = scan.has("FIRE");
    @Nullable Amount threads = scan.threadsPerInch();
    double count = threads == null ? 0.0 : threads.value();
    if (size == null && !garden) {
      throw missing("the size is missing");
    }
    if (diameter == 0.75 && count == 0.0 && garden == fire) {
      throw scan.refused(
          scan.at("NH"),
          "3/4 NH is a garden hose of 11.5 or a fire hose of 8 threads per inch: which of them?"
              + " Both are for water");
    }
    boolean isGarden =
        diameter == 0.75 && (garden || count == 11.5) && (count == 0.0 || count == 11.5);
    boolean isSmallFire =
        (diameter == 0.75 || diameter == 1.0) && !garden && (count == 0.0 || count == 8.0);
    boolean isLargeFire = diameter == 1.5 && !garden && (count == 0.0 || count == 9.0);
    String name =
        isGarden ? "3/4-11.5 NH" : isSmallFire ? "1-8 NH" : isLargeFire ? "1-1/2-9 NH" : "";
    requireGender(isGarden);
    Gender gender = gender();
    int start = size == null ? 0 : size.start();
    ForeignThread thread = ForeignThread.find(name, gender)
        .orElseThrow(
            () -> scan.refused(
                start,
                "no hose coupling for water of this size is known: 3/4-11.5 NH, 1-8 NH and 1-1/2-9 NH are"));
    return new EndWords.WithForm(
        thread,
        SealForm.WATER,
        !scan.has("FIXED") && (scan.has("SWIVEL") || SealForm.WATER.isNut(gender)),
        Optional.empty());
  }

  /** A hose for water is refused for what it is, whichever half was meant. */
  private void requireGender(boolean isGarden) {
    if (!scan.has("MALE") && !scan.has("FEMALE")) {
      throw missing((isGarden ? "a garden hose" : "a fire hose")
          + " is for water: never put compressed air on it or its couplings, as the air stored in it throws about what"
          + " bursts or parts. To see what goes on it all the same, say male or female");
    }
  }

  /** Letters of a pipe thread beside port, washer or ring: G has these forms, a taper thread seals by itself. */
  private EndWords pipe() {
    String masked = scan.pipeThread();
    boolean port = scan.has("PORT") || scan.has("BOSS");
    boolean seal = scan.has("WASHER") || scan.has("RING") || scan.has("BONDED");
    boolean none = !port && !seal && !scan.has("STUD");
    if (none || scan.has("FLARE") || scan.has("CONE") || scan.has("JIC")) {
      throw strange();
    }
    boolean told = scan.has("MALE") || scan.has("FEMALE");
    EndWords.Pipe pipe =
        PipeReader.read(scan.text(), told ? masked : masked + (port ? " female" : " male"));
    if (pipe.thread().family() != ThreadFamily.BSPP) {
      if (seal) {
        throw scan.refused(
            scan.has("WASHER") ? scan.at("WASHER") : scan.at("RING"),
            pipe.thread().label() + " seals on the thread and has no washer or ring");
      }
      return pipe;
    }
    boolean male = pipe.thread().gender() == Gender.MALE;
    if (male && port) {
      throw scan.refused(scan.at("PORT"), "a port is female");
    }
    if (male && !seal) {
      return pipe;
    }
    SealForm form =
        male ? (scan.has("RING") ? SealForm.RING : SealForm.WASHER) : SealForm.FLAT_FACE;
    return new EndWords.WithForm(pipe.thread(), form, pipe.turnsFreely(), pipe.remark());
  }

  private EndWords cone(boolean flare) {
    SealForm form = SealForm.CONE_24;
    Optional<String> remark = Optional.empty();
    @Nullable Amount angle = scan.angle();
    double degrees = angle == null ? 0.0 : angle.value();
    boolean jic = scan.has("JIC");
    if (scan.has("INVERTED")) {
      form = SealForm.INVERTED_FLARE;
    } else if (jic && angle != null && degrees != 37.0) {
      throw scan.refused(angle.start(), "JIC is the flare of 37°");
    } else if (jic || degrees == 37.0) {
      form = SealForm.FLARE_37;
    } else if (degrees == 45.0) {
      form = SealForm.FLARE_45;
    } else if (angle != null && (degrees != 24.0 || flare)) {
      throw scan.refused(angle.start(), "flares are of 37° or 45°, cones of tube fittings of 24°");
    } else if (angle == null) {
      if (!flare) {
        throw scan.refused(scan.at("CONE"), "which cone: 24°, 37° or 45°?");
      }
      form = flareByThread();
      remark = Optional.of("read as " + form.label()
          + (scan.dash() == null
              ? ", because no flare of the other angle has this thread"
              : ", whose sizes are told by dash numbers; say 45° if that is meant")
          + ": look at the cone");
    }
    boolean nut = scan.has("NUT");
    Gender gender = nut ? nutGender(form) : gender();
    NamedThread thread = coneThread(form, gender);
    requireForm(thread, form);
    boolean fixed = scan.has("FIXED");
    return new EndWords.WithForm(
        thread, form, !fixed && (nut || scan.has("SWIVEL") || form.isNut(gender)), remark);
  }

  private static Gender nutGender(SealForm form) {
    return form == SealForm.INVERTED_FLARE ? Gender.MALE : Gender.FEMALE;
  }

  /** The flare that a text without an angle means: by dash size 37°, by thread the only one that has it. */
  private SealForm flareByThread() {
    @Nullable Amount size = scan.size();
    @Nullable Amount threads = scan.threadsPerInch();
    if (scan.dash() != null) {
      return SealForm.FLARE_37;
    }
    if (size != null && threads != null) {
      Optional<ForeignThread> thread =
          ThreadNames.unified(size.value(), threads.value(), Gender.MALE);
      List<SealForm> having = thread.stream()
          .flatMap(known ->
              FLARES.stream().filter(form -> FormRules.problem(known, form).isEmpty()))
          .toList();
      if (having.size() == 1) {
        return having.get(0);
      }
    }
    String threadsOfTube = size == null || threads != null ? "" : threadsOfTube(size.value());
    throw scan.refused(
        scan.at("FLARE"),
        "37° or 45° flare? They share threads and do not seal on each other: look at the cone"
            + threadsOfTube);
  }

  private static String threadsOfTube(double inches) {
    return FLARES.stream()
        .flatMap(form -> TubeThread.ofTube(form, inches).stream()
            .map(row -> row.thread() + " at " + form.label()))
        .collect(Collectors.joining(", ", ". Tube of this size has ", ""));
  }

  private NamedThread coneThread(SealForm form, Gender gender) {
    @Nullable String metric = scan.metric();
    if (metric != null) {
      return metric(metric, gender);
    }
    if (form == SealForm.CONE_24) {
      throw missing("the metric thread of the 24° cone is missing, such as M14x1.5");
    }
    return unified(form, gender);
  }

  private NamedThread metric(String name, Gender gender) {
    return ForeignThread.find(name, gender)
        .orElseThrow(() -> scan.refused(
            scan.metricAt(), "no metric thread " + name + " is known to this library"));
  }

  /** A unified thread by its threads per inch, or that of a dash size or a tube. */
  private NamedThread unified(SealForm form, Gender gender) {
    @Nullable Amount size = scan.size();
    @Nullable Amount threads = scan.threadsPerInch();
    @Nullable Amount dash = scan.dash();
    if (dash != null && size == null) {
      int number = dash.isWhole() ? (int) Math.min(dash.value(), 1.0e6) : 0;
      return byRow(
          TubeThread.ofDash(form, number),
          gender,
          dash.start(),
          "no " + form.label() + " of this dash size is known; write its thread");
    }
    if (size == null) {
      throw missing("the thread is missing, such as 9/16-18");
    }
    int start = size.start();
    if (threads != null) {
      return ThreadNames.unified(size.value(), threads.value(), gender)
          .orElseThrow(() -> scan.refused(
              start,
              "no unified thread of flares and ports has this size and these threads per inch"));
    }
    Optional<TubeThread> dashRow = bareDash(form, size.value());
    if (dashRow.isPresent()) {
      return byRow(dashRow, gender, start, "no " + form.label() + " of this dash size is known");
    }
    boolean isTube = form != SealForm.O_RING || scan.has("TUBE");
    if (!isTube || scan.isMillimetres()) {
      throw scan.refused(
          size.start(),
          "a size without threads per inch does not tell the thread: write it, such as 9/16-18, or the"
              + " dash size, such as -6");
    }
    return byRow(
        TubeThread.ofTube(form, size.value()),
        gender,
        size.start(),
        "no " + form.label() + " for a tube of this size is known; write its thread");
  }

  /** A whole number after JIC or ORB is a dash size, where no tube of so many inches has the form. */
  private Optional<TubeThread> bareDash(SealForm form, double size) {
    boolean isNamed = scan.has("JIC") || scan.has("ORB");
    boolean isBare = !scan.isInches() && !scan.isMillimetres() && !scan.has("TUBE");
    boolean isDash = size == Math.rint(size) && TubeThread.ofTube(form, size).isEmpty();
    return isNamed && isBare && isDash
        ? TubeThread.ofDash(form, (int) Math.min(size, 1.0e6))
        : Optional.empty();
  }

  private NamedThread byRow(Optional<TubeThread> row, Gender gender, int at, String problem) {
    return row.flatMap(known -> ForeignThread.find(known.thread(), gender))
        .orElseThrow(() -> scan.refused(at, problem));
  }

  private void requireForm(NamedThread thread, SealForm form) {
    FormRules.problem(thread, form).ifPresent(problem -> {
      List<SealForm> having = FormRules.of(thread);
      throw scan.refused(
          0,
          problem
              + (having.isEmpty()
                  ? ""
                  : "; " + ThreadNames.of(thread) + " has "
                      + having.stream().map(SealForm::label).collect(Collectors.joining(" or "))));
    });
  }

  /** Ports and studs with an O-ring, a washer or a ring, and small metric threads. */
  private EndWords ringOrFace() {
    boolean nut = scan.has("NUT");
    Gender gender = nut ? Gender.FEMALE : gender();
    boolean ringWord = scan.has("RING");
    boolean isORing = scan.has("ORB") || (scan.has("O") && ringWord);
    @Nullable String metric = scan.metric();
    NamedThread thread = metric != null ? metric(metric, gender) : unified(SealForm.O_RING, gender);
    boolean washer = scan.has("WASHER") || scan.has("BONDED");
    boolean port = scan.has("PORT") || scan.has("BOSS") || scan.has("ORB");
    Optional<String> remark = Optional.empty();
    SealForm form;
    if (isORing && !ThreadNames.isSmall(thread)) {
      form = SealForm.O_RING;
    } else if (gender == Gender.MALE && (washer || ringWord)) {
      form = washer ? SealForm.WASHER : SealForm.RING;
    } else if (gender == Gender.FEMALE && (washer || scan.has("FLAT"))) {
      form = SealForm.FLAT_FACE;
    } else if (ThreadNames.isSmall(thread)) {
      form = gender == Gender.MALE ? SealForm.WASHER : SealForm.FLAT_FACE;
    } else if (port) {
      form = SealForm.O_RING;
      remark = metric == null
          ? Optional.empty()
          : Optional.of("read as port with O-ring (ISO 6149); write \"" + ThreadNames.of(thread)
              + " flat-face port\" if it seals on a washer (ISO 9974)");
    } else {
      throw scan.refused(
          scan.text().length(),
          "the thread does not tell what seals: " + asked(thread) + "? Look at the part");
    }
    requireForm(thread, form);
    return new EndWords.WithForm(thread, form, nut || scan.has("SWIVEL"), remark);
  }

  private static String asked(NamedThread thread) {
    return FormRules.of(thread).stream()
        .map(form -> "\"" + FormText.label(thread, form) + "\"")
        .collect(Collectors.joining(" or "));
  }
}
