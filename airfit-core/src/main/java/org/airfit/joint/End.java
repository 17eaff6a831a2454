package org.airfit.joint;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Source;
import org.airfit.thread.Gender;
import org.airfit.thread.Limits;
import org.airfit.thread.NamedThread;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadForm;

/**
 * How a part ends, where another part is joined to it: a pipe thread, a hose barb, the plain end of a hose, a push-in
 * end, the plain end of a tube, a thread beside a form that seals (a flare, a port, a stud with a washer), or the head
 * of a claw coupling.
 *
 * <p>Ends as people write them; what is missing is named:
 *
 * <pre>{@code
 * import org.airfit.joint.End;
 * import org.airfit.quantity.QuantityFormatException;
 *
 * class WrittenEnds {
 *   public static void main(String[] args) {
 *     System.out.println(End.parse("1/4 MNPT")); // 1/4 NPT male
 *     System.out.println(End.parse("8 mm push-in")); // 8 mm push-in
 *     try {
 *       End.parse("1/4 NPT");
 *     } catch (QuantityFormatException e) {
 *       System.out.println(e.getMessage());
 *       // "1/4 NPT": male or female is missing, at position 7; accepted: an end such as "3/8 NPT male", "G
 *       // 1/2 female", "3/8 in barb", "8 mm push-in", "37° flare 9/16-18 male", "M14x1.5 O-ring port" or
 *       // "two-lug claw"
 *     }
 *   }
 * }
 * }</pre>
 */
public sealed interface End {

  /** What stands behind the label of an end that turns freely. */
  private static String swivel(boolean turnsFreely) {
    return turnsFreely ? " swivel" : "";
  }

  /** {@return the end as people write it, which {@link #parse(String)} reads back; what it prints is the same} */
  String label();

  /**
   * Obtains what can be said of the clear bore through this end. The size of a thread is not the size of its bore.
   *
   * @return the bore to expect; empty where no source tells, as of a female thread, which does not narrow the way
   */
  Optional<Bore> clearBore();

  /**
   * A pipe thread.
   *
   * @param thread which thread
   * @param turnsFreely whether it is a swivel: it turns freely on the part
   */
  record Threaded(ThreadDesignation thread, boolean turnsFreely) implements End {

    /**
     * Refuses {@code null}.
     *
     * @param thread which thread
     * @param turnsFreely whether it is a swivel: it turns freely on the part
     */
    public Threaded {
      Objects.requireNonNull(thread, "thread");
    }

    /**
     * Obtains an end that is one piece with its part.
     *
     * @param thread which thread
     */
    public Threaded(ThreadDesignation thread) {
      this(thread, false);
    }

    /**
     * Obtains an end from what names its thread.
     *
     * @param family the family
     * @param size the nominal size
     * @param gender outside or inside
     * @throws IllegalArgumentException if the family has no such size, or is only female and {@code gender} is male
     */
    public Threaded(ThreadFamily family, NominalThreadSize size, Gender gender) {
      this(new ThreadDesignation(family, size, gender));
    }

    /** {@return the family of the thread} */
    public ThreadFamily family() {
      return thread.family();
    }

    /** {@return the nominal size of the thread} */
    public NominalThreadSize size() {
      return thread.size();
    }

    /** {@return whether the thread is outside or inside} */
    public Gender gender() {
      return thread.gender();
    }

    /**
     * {@inheritDoc}
     *
     * <p>A male American thread is taken as cut from steel pipe of schedule 80 to 40, as nipples are.
     */
    @Override
    public Optional<Bore> clearBore() {
      if (gender() == Gender.FEMALE || family().form() != ThreadForm.FLAT_60) {
        return Optional.empty();
      }
      return Tube.find(Tube.Kind.STEEL_PIPE, size().label(), "80")
          .map(thick -> new Bore(
              new Limits(thick.bore(), Tube.steelPipe(size(), 40).bore()),
              "if cut from schedule 80 to 40 pipe",
              Source.derived("ASTM A733: nipples are made from pipe; bores of ASME B36.10M")));
    }

    @Override
    public String label() {
      return thread.label() + swivel(turnsFreely);
    }

    /** {@return the {@link #label()}} */
    @Override
    public String toString() {
      return label();
    }
  }

  /**
   * A barb to push a hose on.
   *
   * @param bore the hose it is made for
   */
  record Barb(HoseBore bore) implements End {

    /**
     * Refuses {@code null}.
     *
     * @param bore the hose it is made for
     */
    public Barb {
      Objects.requireNonNull(bore, "bore");
    }

    /** The wall a barb needs [mm]: brass, from memory, no standard. */
    private static final Limits WALL =
        new Limits(Length.ofMillimetres(0.8), Length.ofMillimetres(1.2));

    /**
     * {@inheritDoc}
     *
     * <p>A barb is always narrower than the hose it is made for, because it needs a wall.
     */
    @Override
    public Optional<Bore> clearBore() {
      Length twiceThick = WALL.most().times(2.0);
      if (bore.nominal().compareTo(twiceThick) <= 0) {
        return Optional.empty();
      }
      return Optional.of(new Bore(
          new Limits(
              bore.nominal().minus(twiceThick),
              bore.nominal().minus(WALL.least().times(2.0))),
          "if the barb has a wall of 0.8 to 1.2 mm",
          Source.fromMemory("wall of a brass hose barb; no standard was found")));
    }

    @Override
    public String label() {
      return bore.label() + " barb";
    }

    /** {@return the {@link #label()}} */
    @Override
    public String toString() {
      return label();
    }
  }

  /**
   * The plain end of a hose.
   *
   * @param bore the hose
   */
  record HoseEnd(HoseBore bore) implements End {

    /**
     * Refuses {@code null}.
     *
     * @param bore the hose
     */
    public HoseEnd {
      Objects.requireNonNull(bore, "bore");
    }

    /** {@inheritDoc} */
    @Override
    public Optional<Bore> clearBore() {
      return StandardHose.of(bore)
          .map(standard -> new Bore(standard.anyBore(), "if made to ISO 1307", standard.source()));
    }

    @Override
    public String label() {
      return bore.label() + " hose";
    }

    /** {@return the {@link #label()}} */
    @Override
    public String toString() {
      return label();
    }
  }

  /**
   * The plain end of a tube, which goes into a push-in end. A tube is named by its outside, a hose by its inside.
   *
   * @param outside the outside diameter of the tube by its name, in [1, 500] mm
   * @param wall the thickness of its wall, above 0 and below half of {@code outside}; empty if it was not told
   */
  record TubeEnd(Length outside, Optional<Length> wall) implements End {

    /**
     * Checks the components.
     *
     * @param outside the outside diameter of the tube by its name, in [1, 500] mm
     * @param wall the thickness of its wall, above 0 and below half of {@code outside}; empty if it was not told
     * @throws IllegalArgumentException if one of them is out of range
     */
    public TubeEnd {
      requireOutside(outside);
      Objects.requireNonNull(wall, "wall");
      wall.ifPresent(told -> {
        if (!(told.metres() > 0.0 && told.metres() < outside.metres() / 2.0)) {
          throw new IllegalArgumentException("wall of a tube must be above 0 and below half of its "
              + "outside diameter of " + outside.inFull(LengthUnit.MILLIMETRE) + ", was "
              + told.inFull(LengthUnit.MILLIMETRE));
        }
      });
    }

    /**
     * Obtains the end of a tube whose wall is not known.
     *
     * @param outside the outside diameter of the tube by its name, in [1, 500] mm
     * @throws IllegalArgumentException if {@code outside} is out of range
     */
    public TubeEnd(Length outside) {
      this(outside, Optional.empty());
    }

    /** {@return the outside less twice the wall; empty if the wall was not told, for tube of one outside has several} */
    @Override
    public Optional<Bore> clearBore() {
      return wall.map(told -> {
        Length bore = outside.minus(told.times(2.0));
        return new Bore(
            new Limits(bore, bore),
            "by its outside and the wall that was told",
            Source.derived("outside diameter less twice the wall"));
      });
    }

    @Override
    public String label() {
      return TubeText.of(outside) + " tube"
          + wall.map(told -> ", wall " + told.label(TubeText.unit(outside))).orElse("");
    }

    /** {@return the {@link #label()}} */
    @Override
    public String toString() {
      return label();
    }
  }

  /**
   * A push-in end, which grips a tube on its outside and seals on it with a ring.
   *
   * @param outside the outside diameter of the tube it is made for, in [1, 500] mm
   */
  record PushIn(Length outside) implements End {

    /**
     * Checks the component.
     *
     * @param outside the outside diameter of the tube it is made for, in [1, 500] mm
     * @throws IllegalArgumentException if {@code outside} is out of range
     */
    public PushIn {
      requireOutside(outside);
    }

    /** {@return empty: nothing was read of the bores of push-in ends} */
    @Override
    public Optional<Bore> clearBore() {
      return Optional.empty();
    }

    @Override
    public String label() {
      return TubeText.of(outside) + " push-in";
    }

    /** {@return the {@link #label()}} */
    @Override
    public String toString() {
      return label();
    }
  }

  /**
   * A parallel thread that only pulls, beside the form that seals: a flare, a port or stud with O-ring, a flat face with
   * a washer, a hose coupling for water.
   *
   * <p>The geometry of the form itself is not held: the standards of flares, ports and cones were not seen, only charts
   * of their threads. The limits of the thread are those of its {@link NamedThread}.
   *
   * @param thread which thread, with its gender
   * @param form what seals
   * @param turnsFreely whether it is a nut or swivel that turns freely on the part
   */
  record Formed(NamedThread thread, SealForm form, boolean turnsFreely) implements End {

    /**
     * Checks that the form is made with such a thread.
     *
     * @param thread which thread, with its gender
     * @param form what seals
     * @param turnsFreely whether it is a nut or swivel that turns freely on the part
     * @throws IllegalArgumentException if the form is not made with that thread or gender
     */
    public Formed {
      Objects.requireNonNull(thread, "thread");
      Objects.requireNonNull(form, "form");
      FormRules.require(thread, form);
    }

    /** {@return whether the thread is outside or inside} */
    public Gender gender() {
      return thread.gender();
    }

    /**
     * {@inheritDoc}
     *
     * <p>Only the passages of G ports were read, from a chart of ISO 1179-1.
     */
    @Override
    public Optional<Bore> clearBore() {
      return form == SealForm.FLAT_FACE
          ? PortPassage.of(ThreadNames.of(thread))
              .map(passage -> new Bore(
                  new Limits(passage.bore(), passage.bore()),
                  "if drilled as the port chart says",
                  passage.source()))
          : Optional.empty();
    }

    @Override
    public String label() {
      return FormText.label(thread, form)
          + (form.isNut(gender()) && !turnsFreely ? " fixed" : "")
          + swivel(turnsFreely);
    }

    /** {@return the {@link #label()}} */
    @Override
    public String toString() {
      return label();
    }
  }

  /**
   * The head of a claw coupling. Heads of one kind are alike whatever hose or thread is behind them.
   *
   * @param head which head
   */
  record Claw(ClawHead head) implements End {

    /**
     * Refuses {@code null}.
     *
     * @param head which head
     */
    public Claw {
      Objects.requireNonNull(head, "head");
    }

    /** {@return empty: nothing was read of the bores of claw heads} */
    @Override
    public Optional<Bore> clearBore() {
      return Optional.empty();
    }

    @Override
    public String label() {
      return head.label() + " claw";
    }

    /** {@return the {@link #label()}} */
    @Override
    public String toString() {
      return label();
    }
  }

  private static void requireOutside(Length outside) {
    Objects.requireNonNull(outside, "outside");
    if (!(outside.millimetres() >= 1.0 && outside.millimetres() <= 500.0)) {
      throw new IllegalArgumentException("outside diameter of a tube must be in [1, 500] mm, was "
          + outside.inFull(LengthUnit.MILLIMETRE));
    }
  }

  /**
   * Reads an end as people write it.
   *
   * <p>Size, thread and gender stand in any order. R is male, Rc, Rp and what else a standard has only inside is female
   * by its letters; every other thread needs male or female, M or F, as a word of its own or in front of the letters
   * (MNPT, FIP). A dash and a number behind the size are threads per inch, as in "1/4-18 NPT": they must be those of
   * the thread. So "3-8 NPT" is size 3 with 8 threads per inch, see {@link #remarkOn}. At most 200 characters are read.
   *
   * <p>Barb and hose stand behind the bore of a hose, push-in and tube behind the outside diameter of a tube; behind
   * tube may stand its wall. A flare is told by its angle and its thread, tube or dash size; a port or stud by its
   * thread and what seals it; a claw by its head. "Swivel" says that the end turns freely; the nut of a flare does by
   * itself. What may be meant in two ways, such as "3/8 flare", is refused with the question to ask.
   *
   * @param text such as "3/8 NPT male", "1/4-18 NPT female", "1/4 in FIP", "0.25 MNPT", "R 1/4", "G 1/2 female", "3/8
   *     in barb", "10 mm hose", "8 mm push-in", "6 mm tube, wall 1 mm", "37° flare 9/16-18 male", "-6 flare nut",
   *     "45° flare 3/8 in tube male", "9/16-18 O-ring port", "M14x1.5 male with O-ring", "G 1/4 port", "G 1/4 male with
   *     washer", "M5 male", "two-lug claw" or "3/4 in garden hose female"
   * @return the end
   * @throws QuantityFormatException if the text is no end, names a thread its standard does not have, or gives it the
   *     threads per inch of another; it tells what is missing or what would be accepted
   */
  static End parse(String text) {
    EndWords words = EndReader.read(text);
    if (words instanceof EndWords.Pipe pipe) {
      return new Threaded(pipe.thread(), pipe.turnsFreely());
    }
    if (words instanceof EndWords.OfHose hose) {
      return hose.isBarb() ? new Barb(hose.bore()) : new HoseEnd(hose.bore());
    }
    if (words instanceof EndWords.OfTube tube) {
      return tube.isGrip() ? new PushIn(tube.outside()) : new TubeEnd(tube.outside(), tube.wall());
    }
    if (words instanceof EndWords.WithForm formed) {
      return new Formed(formed.thread(), formed.form(), formed.turnsFreely());
    }
    return new Claw(((EndWords.OfClaw) words).head());
  }

  /**
   * Tells what whoever typed an end ought to know, because it may be meant otherwise.
   *
   * @param text a text that {@link #parse} reads
   * @return the remark on "3-8 NPT male", which is size 3 and not 3/8; empty for most texts
   * @throws QuantityFormatException if {@code text} is no end
   */
  static Optional<String> remarkOn(String text) {
    return EndReader.read(text).remark();
  }
}
