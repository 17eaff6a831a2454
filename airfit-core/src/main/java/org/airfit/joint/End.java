package org.airfit.joint;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.internal.Digits;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Source;
import org.airfit.thread.Gender;
import org.airfit.thread.Limits;
import org.airfit.thread.PipeThread;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadForm;

/** How a part ends, where another part is joined to it: a pipe thread, a hose barb, or the plain end of a hose. */
public sealed interface End {

  /** {@return the end as people write it, which {@link #parse(String)} reads back} */
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
   * @param family the family
   * @param size the nominal size
   * @param gender outside or inside
   */
  record Threaded(ThreadFamily family, NominalThreadSize size, Gender gender) implements End {

    /**
     * Checks that the standard has such a thread.
     *
     * @param family the family
     * @param size the nominal size
     * @param gender outside or inside
     * @throws IllegalArgumentException if the family has no such size, or is only female and {@code gender} is male
     */
    public Threaded {
      family.requireSize(size);
      family.requireGender(gender);
    }

    /** {@return the geometry, empty for the dryseal families, whose tables were not seen} */
    public Optional<PipeThread> thread() {
      return family.thread(size);
    }

    /**
     * {@inheritDoc}
     *
     * <p>A male American thread is taken as cut from steel pipe of schedule 80 to 40, as nipples are.
     */
    @Override
    public Optional<Bore> clearBore() {
      if (gender == Gender.FEMALE || family.form() != ThreadForm.FLAT_60) {
        return Optional.empty();
      }
      return Tube.find(Tube.Kind.STEEL_PIPE, size.label(), "80")
          .map(thick -> new Bore(
              new Limits(thick.bore(), Tube.steelPipe(size, 40).bore()),
              "if cut from schedule 80 to 40 pipe",
              Source.derived("ASTM A733: nipples are made from pipe; bores of ASME B36.10M")));
    }

    @Override
    public String label() {
      String symbol = family.symbol(gender);
      return family.form() == ThreadForm.FLAT_60
          ? size + " " + symbol + " " + gender.label()
          : symbol + " " + size + " " + gender.label();
    }
  }

  /**
   * A barb to push a hose on.
   *
   * @param bore the hose it is made for
   */
  record Barb(HoseBore bore) implements End {

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
  }

  /**
   * The plain end of a hose.
   *
   * @param bore the hose
   */
  record HoseEnd(HoseBore bore) implements End {

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
  }

  /**
   * Reads an end as people write it.
   *
   * @param text such as "3/8 NPT male", "1/4-18 NPT female", "G 1/2 female", "R 1/4 male", "3/8 in barb" or "10 mm hose"
   * @return the end
   * @throws QuantityFormatException if the text is no end, names a thread its standard does not have, or gives it the threads per inch of
   *     another; it tells what would be accepted
   */
  static End parse(String text) {
    return EndReader.read(text);
  }
}

/** Reads ends. */
final class EndReader {

  private static final String EXAMPLES =
      "size, family (NPT, NPTF, NPSC, NPSM, R, Rc, Rp, G) and male or female, such as \"3/8 NPT male\" or \"G 1/2 female\"; or a hose bore"
          + " with barb or hose, such as \"3/8 in barb\"";

  private static final Pattern HOSE =
      Pattern.compile("\\s*(.+?)\\s+(barb|hose)\\s*", Pattern.CASE_INSENSITIVE);

  private static final String SIZE = "[0-9][0-9/ -]*?[\"']?|[0-9]*[¼½¾⅛⅜]";

  private static final Pattern THREAD = Pattern.compile(
      "\\s*(?:(?<a>" + SIZE + ")(?:\\s*-\\s*(?<tpi>27|28|19|18|14|11\\.5|11|8))?\\s*)?"
          + "(?<family>NPTF|NPT|NPSC|NPSM|NPSF|NPSI|PTF-SAE SHORT|BSPT|BSPP|Rc|Rp|R|G)\\s*"
          + "(?<b>" + SIZE + ")?\\s*(?<gender>male|female)\\s*",
      Pattern.CASE_INSENSITIVE);

  private EndReader() {}

  static End read(String text) {
    Matcher hose = HOSE.matcher(text);
    if (hose.matches()) {
      HoseBore bore = HoseBore.parse(hose.group(1));
      return hose.group(2).equalsIgnoreCase("barb") ? new End.Barb(bore) : new End.HoseEnd(bore);
    }
    Matcher thread = THREAD.matcher(text);
    if (!thread.matches() || (thread.group("a") == null) == (thread.group("b") == null)) {
      throw new QuantityFormatException(text, 0, "no end of a part", EXAMPLES);
    }
    String size = thread.group("a") == null ? thread.group("b") : thread.group("a");
    String symbol = thread.group("family").toUpperCase(Locale.ROOT);
    Gender gender = thread.group("gender").equalsIgnoreCase("male") ? Gender.MALE : Gender.FEMALE;
    if (symbol.equals("RC") && gender == Gender.MALE) {
      throw new QuantityFormatException(
          text, thread.start("gender"), "Rc is only female", "R for the male taper thread");
    }
    try {
      End.Threaded end = new End.Threaded(family(symbol), NominalThreadSize.parse(size), gender);
      requireThreadsPerInch(text, thread, end);
      return end;
    } catch (QuantityFormatException e) {
      throw e;
    } catch (IllegalArgumentException e) {
      throw new QuantityFormatException(
          text, thread.start("family"), String.valueOf(e.getMessage()), EXAMPLES);
    }
  }

  private static ThreadFamily family(String symbol) {
    return switch (symbol) {
      case "G", "BSPP" -> ThreadFamily.BSPP;
      case "R", "RC", "BSPT" -> ThreadFamily.BSPT;
      case "RP" -> ThreadFamily.RP;
      case "PTF-SAE SHORT" -> ThreadFamily.PTF_SAE_SHORT;
      default -> ThreadFamily.valueOf(symbol);
    };
  }

  private static void requireThreadsPerInch(String text, Matcher thread, End.Threaded end) {
    String typed = thread.group("tpi");
    if (typed == null) {
      return;
    }
    double standard =
        end.thread().map(PipeThread::threadsPerInch).orElse(Double.parseDouble(typed));
    if (Double.parseDouble(typed) != standard) {
      throw new QuantityFormatException(
          text,
          thread.start("tpi"),
          end.label() + " has " + Digits.plain(standard) + " threads per inch, not " + typed,
          end.size() + "-" + Digits.plain(standard) + " " + end.family().symbol()
              + ", or another family with " + typed);
    }
  }
}
