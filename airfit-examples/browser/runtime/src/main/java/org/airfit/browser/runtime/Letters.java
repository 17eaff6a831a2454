package org.airfit.browser.runtime;

import org.teavm.jso.JSBody;

/**
 * What kind of sign one is, and its other case, by the browser's own tables of Unicode; the compiler's class library
 * brings tables of its own. {@link Leading} leads calls of {@link Character} here.
 */
final class Letters {

  /** Signs below this are looked up once. */
  private static final int REMEMBERED = 0x3000;

  /** One more than the kind of a sign; 0 where it was not looked up yet. */
  private static final int[] kinds = new int[REMEMBERED];

  /** Of the capital with a dot JavaScript makes two signs, i and the dot. */
  private static final int DOTTED_I = 0x130;

  private Letters() {}

  static int getType(int sign) {
    if (sign < 0 || sign >= REMEMBERED) {
      return type(sign);
    }
    if (kinds[sign] == 0) {
      kinds[sign] = type(sign) + 1;
    }
    return kinds[sign] - 1;
  }

  static int getType(char sign) {
    return getType((int) sign);
  }

  static boolean isDigit(int sign) {
    return sign < 0x80
        ? sign >= '0' && sign <= '9'
        : getType(sign) == Character.DECIMAL_DIGIT_NUMBER;
  }

  static boolean isDigit(char sign) {
    return isDigit((int) sign);
  }

  static boolean isLetterOrDigit(int sign) {
    int kind = getType(sign);
    return kind == Character.DECIMAL_DIGIT_NUMBER
        || (kind >= Character.UPPERCASE_LETTER && kind <= Character.OTHER_LETTER);
  }

  static boolean isLetterOrDigit(char sign) {
    return isLetterOrDigit((int) sign);
  }

  static boolean isSpaceChar(int sign) {
    int kind = getType(sign);
    return kind >= Character.SPACE_SEPARATOR && kind <= Character.PARAGRAPH_SEPARATOR;
  }

  static boolean isSpaceChar(char sign) {
    return isSpaceChar((int) sign);
  }

  /** Blanks that do not hold a line together, and controls that part words. */
  static boolean isWhitespace(int sign) {
    if (sign < 0x80) {
      return sign == ' ' || (sign >= '\t' && sign <= '\r') || (sign >= 0x1c && sign <= 0x1f);
    }
    return isSpaceChar(sign) && sign != 0xa0 && sign != 0x2007 && sign != 0x202f;
  }

  static boolean isWhitespace(char sign) {
    return isWhitespace((int) sign);
  }

  static int toLowerCase(int sign) {
    if (sign < 0x80) {
      return sign >= 'A' && sign <= 'Z' ? sign + 32 : sign;
    }
    return sign == DOTTED_I ? 'i' : lower(sign);
  }

  static char toLowerCase(char sign) {
    return (char) toLowerCase((int) sign);
  }

  static int toUpperCase(int sign) {
    return sign < 0x80 ? (sign >= 'a' && sign <= 'z' ? sign - 32 : sign) : upper(sign);
  }

  static char toUpperCase(char sign) {
    return (char) toUpperCase((int) sign);
  }

  /** The place of its category in the order in which {@link Character} numbers them. */
  @JSBody(
      params = "sign",
      script = "if (sign < 0 || sign > 1114111) return 0;"
          + "var text = String.fromCodePoint(sign);"
          + "var all = 'Cn,Lu,Ll,Lt,Lm,Lo,Mn,Me,Mc,Nd,Nl,No,Zs,Zl,Zp,Cc,Cf,,Co,Cs,Pd,Ps,Pe,Pc,Po,Sm,Sc,Sk,So,Pi,Pf'"
          + ".split(',');"
          + "return all.findIndex(function(name) {"
          + "return name !== '' && new RegExp('\\\\p{' + name + '}', 'u').test(text); });")
  private static native int type(int sign);

  @JSBody(
      params = "sign",
      script = "if (sign > 1114111) return sign;"
          + "var other = String.fromCodePoint(sign).toLowerCase();"
          + "var first = other.codePointAt(0);"
          + "return other.length > (first > 65535 ? 2 : 1) ? sign : first;")
  private static native int lower(int sign);

  @JSBody(
      params = "sign",
      script = "if (sign > 1114111) return sign;"
          + "var other = String.fromCodePoint(sign).toUpperCase();"
          + "var first = other.codePointAt(0);"
          + "return other.length > (first > 65535 ? 2 : 1) ? sign : first;")
  private static native int upper(int sign);
}
