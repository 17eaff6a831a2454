package org.airfit.browser.probe;

/** Kinds and cases of signs: on the JVM by the tables of the JDK, in JavaScript by those of the browser. */
final class Signs {

  /** Signs of these blocks have had one kind since long; newer ones are as new as the Unicode of the JDK or browser. */
  private static final int[][] BLOCKS = {
    {0, 0x17f}, {0x388, 0x52f}, {0x2000, 0x20b0}, {0x2100, 0x23ff}, {0xff00, 0xff5e}
  };

  private Signs() {}

  static void tell(Tape tape) {
    tape.group("sign");
    for (int[] block : BLOCKS) {
      for (int sign = block[0]; sign <= block[1]; sign++) {
        char one = (char) sign;
        tape.text(sign + ": " + Character.getType(sign) + ' ' + Character.isDigit(one) + ' '
            + Character.isLetterOrDigit(one) + ' ' + Character.isSpaceChar(one) + ' '
            + Character.isWhitespace(one) + ' ' + (int) Character.toLowerCase(one) + ' '
            + (int) Character.toUpperCase(one) + ' ' + Character.isWhitespace(sign) + ' '
            + Character.isDigit(sign) + ' ' + Character.toUpperCase(sign));
      }
    }
  }
}
