package org.airfit.thread;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;

/** How a part ends, where another part is joined to it: a pipe thread, a hose barb, or the plain end of a hose. */
public sealed interface End {

  /** {@return the end as people write it, which {@link #parse(String)} reads back} */
  String label();

  /**
   * A pipe thread.
   *
   * @param family the family
   * @param size the nominal size
   * @param gender outside or inside
   */
  record Threaded(ThreadFamily family, NominalThreadSize size, Gender gender) implements End {

    @Override
    public String label() {
      String symbol =
          family == ThreadFamily.BSPT && gender == Gender.FEMALE ? "Rc" : family.symbol();
      return family == ThreadFamily.NPT
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

    @Override
    public String label() {
      return bore.label() + " hose";
    }
  }

  /**
   * Reads an end as people write it.
   *
   * @param text such as "3/8 NPT male", "G 1/2 female", "R 1/4 male", "3/8 in barb" or "10 mm hose"
   * @return the end
   * @throws QuantityFormatException if the text is no end; it tells where and what would be accepted
   */
  static End parse(String text) {
    Matcher hose = Pattern.compile("\\s*(.+?)\\s+(barb|hose)\\s*", Pattern.CASE_INSENSITIVE)
        .matcher(text);
    if (hose.matches()) {
      HoseBore bore = HoseBore.parse(hose.group(1));
      return hose.group(2).equalsIgnoreCase("barb") ? new Barb(bore) : new HoseEnd(bore);
    }
    Matcher thread = Pattern.compile(
            "\\s*(?:(?<a>[0-9][0-9/ -]*?)(?:\\s*-\\s*[0-9.]+)?\\s*)?(?<family>NPT|BSPT|BSPP|Rc|R|G)\\s*"
                + "(?<b>[0-9][0-9/ -]*?)?\\s*(?<gender>male|female)\\s*",
            Pattern.CASE_INSENSITIVE)
        .matcher(text);
    if (!thread.matches() || (thread.group("a") == null) == (thread.group("b") == null)) {
      throw new QuantityFormatException(
          text,
          0,
          "no end of a part",
          "size, family (NPT, R, Rc, G) and male or female, such as \"3/8 NPT male\" or \"G 1/2 female\"; or a hose bore with"
              + " barb or hose, such as \"3/8 in barb\"");
    }
    String size = thread.group("a") == null ? thread.group("b") : thread.group("a");
    ThreadFamily family = switch (thread.group("family").toUpperCase(java.util.Locale.ROOT)) {
      case "NPT" -> ThreadFamily.NPT;
      case "G", "BSPP" -> ThreadFamily.BSPP;
      default -> ThreadFamily.BSPT;
    };
    Gender gender = thread.group("gender").equalsIgnoreCase("male") ? Gender.MALE : Gender.FEMALE;
    return new Threaded(family, NominalThreadSize.parse(size), gender);
  }
}
