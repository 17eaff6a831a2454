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
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadForm;

/**
 * How a part ends, where another part is joined to it: a pipe thread, a hose barb, the plain end of a hose, a push-in
 * end, or the plain end of a tube.
 */
public sealed interface End {

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
   */
  record Threaded(ThreadDesignation thread) implements End {

    /**
     * Refuses {@code null}.
     *
     * @param thread which thread
     */
    public Threaded {
      Objects.requireNonNull(thread, "thread");
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
      return thread.label();
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
   */
  record TubeEnd(Length outside) implements End {

    /**
     * Checks the component.
     *
     * @param outside the outside diameter of the tube by its name, in [1, 500] mm
     * @throws IllegalArgumentException if {@code outside} is out of range
     */
    public TubeEnd {
      requireOutside(outside);
    }

    /** {@return empty: tube of one outside has walls of several thicknesses} */
    @Override
    public Optional<Bore> clearBore() {
      return Optional.empty();
    }

    @Override
    public String label() {
      return outsideLabel(outside) + " tube";
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
      return outsideLabel(outside) + " push-in";
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

  /** Thirty-seconds of an inch where the diameter is just that, else millimetres; what it gives can be read back. */
  private static String outsideLabel(Length outside) {
    long count = Math.round(outside.inches() * 32.0);
    if (Length.ofInches(count / 32.0).equals(outside)) {
      long over = 32;
      while (count % 2 == 0 && over > 1) {
        count /= 2;
        over /= 2;
      }
      long whole = count / over;
      String fraction = count % over + "/" + over;
      return over == 1 ? whole + " in" : (whole == 0 ? "" : whole + "-") + fraction + " in";
    }
    String rounded = outside.format(LengthUnit.MILLIMETRE);
    return Length.parse(rounded).equals(outside) ? rounded : outside.shown();
  }

  /**
   * Reads an end as people write it.
   *
   * <p>Size, thread and gender stand in any order. R is male, Rc, Rp and what else a standard has only inside is female
   * by its letters; every other thread needs male or female, M or F, as a word of its own or in front of the letters
   * (MNPT, FIP). A dash and a number behind the size are threads per inch, as in "1/4-18 NPT": they must be those of
   * the thread. So "3-8 NPT" is size 3 with 8 threads per inch, see {@link #remarkOn}. At most 200 characters are read.
   *
   * <p>Barb and hose stand behind the bore of a hose, push-in and tube behind the outside diameter of a tube.
   *
   * @param text such as "3/8 NPT male", "1/4-18 NPT female", "1/4 in FIP", "0.25 MNPT", "R 1/4", "G 1/2 female", "3/8
   *     in barb", "10 mm hose", "8 mm push-in" or "5/16 in tube"
   * @return the end
   * @throws QuantityFormatException if the text is no end, names a thread its standard does not have, or gives it the
   *     threads per inch of another; it tells what is missing or what would be accepted
   */
  static End parse(String text) {
    EndReader.Words words = EndReader.read(text);
    return switch (words.kind()) {
      case THREAD -> new Threaded(Objects.requireNonNull(words.thread()));
      case BARB -> new Barb(Objects.requireNonNull(words.bore()));
      case HOSE -> new HoseEnd(Objects.requireNonNull(words.bore()));
      case PUSH_IN -> new PushIn(Objects.requireNonNull(words.outside()));
      case TUBE -> new TubeEnd(Objects.requireNonNull(words.outside()));
    };
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
