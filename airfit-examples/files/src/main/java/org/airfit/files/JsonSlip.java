package org.airfit.files;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A slip of the pen that makes a text no JSON: where it stands, and in plain words what to type.
 *
 * @param place the line, the column and the field, as far as the text was read
 * @param complaint what is wrong and what to type
 */
record JsonSlip(String place, String complaint) {

  private static final Pattern CURLY =
      Pattern.compile("[\u2018\u2019\u201c\u201d\u201e\u201f\u00ab\u00bb]");

  /** A number with a comma: the text in front of the slip, and what follows. */
  private static final Pattern WHOLE_DIGITS = Pattern.compile("(-?[0-9]+),$");

  private static final Pattern DIGITS = Pattern.compile("^[0-9]+");

  /** A number with its unit: the text in front of the slip, and what follows. */
  private static final Pattern NUMBER = Pattern.compile("(-?[0-9]+(?:\\.[0-9]+)?)\\s*$");

  private static final Pattern UNIT = Pattern.compile("^[A-Za-z\u00b0\u00b5%][^,}\\]\\n\"]*");

  private static final Pattern WORD =
      Pattern.compile("^[\\p{L}\\p{N}_.-]{1,30}|^\"[^\"\\n]{0,30}\"?|^.");

  private static final Pattern LAST_TEXT = Pattern.compile("(\"[^\"\\n]{0,30}\")\\s*$");

  /** No complaint needs more of the text around it. */
  private static final int AROUND = 200;

  WrongFileException in(String file) {
    return new WrongFileException(file, place, "is not JSON: " + complaint);
  }

  /**
   * Tells what a library could not read.
   *
   * @param text the text
   * @param at where it stopped, as the number of signs in front; -1 where it does not say
   * @param place the line, the column and the field
   * @param told what the library says
   */
  static JsonSlip of(String text, int at, String place, String told) {
    return new JsonSlip(place, at < 0 || at > text.length() ? told : inWords(text, at, told));
  }

  private static String inWords(String text, int at, String told) {
    if (told.startsWith("Duplicate")) {
      return "the field " + told.replaceFirst("^[^']*'(.*)'.*$", "\"$1\"")
          + " stands twice in one object; leave one out";
    }
    String before = text.substring(Math.max(0, at - AROUND), at);
    String behind = text.substring(at, Math.min(text.length(), at + AROUND));
    String line = before.substring(before.lastIndexOf('\n') + 1) + behind.split("\n", 2)[0];
    if (CURLY.matcher(line).find()) {
      return "curly quotation marks; type the straight one, \", on both sides of a text";
    }
    Matcher whole = WHOLE_DIGITS.matcher(before);
    Matcher rest = DIGITS.matcher(behind);
    if (whole.find() && rest.find()) {
      return whole.group(1) + "," + rest.group() + " has a comma for a point; type "
          + whole.group(1) + "." + rest.group();
    }
    Matcher number = NUMBER.matcher(before);
    Matcher unit = UNIT.matcher(behind);
    if (number.find() && unit.find()) {
      return "a value with its unit goes in quotation marks: \"" + number.group(1) + " "
          + unit.group().strip() + "\"";
    }
    if (before.stripTrailing().endsWith(",") && behind.startsWith("]")) {
      return "the comma in front of ] is one too many";
    }
    if (behind.startsWith("'")) {
      return "a single quotation mark; type the double one, \", on both sides of a text";
    }
    if (behind.startsWith("/") || behind.startsWith("#")) {
      return "a remark is a field whose name begins with //, such as \"//\": \"asked Tuesday\"";
    }
    if (told.contains("was expecting comma")) {
      return behind.startsWith(":")
          ? "a ] is missing in front of " + lastText(before) + ", where a list ends"
          : "a comma is missing in front of " + word(behind);
    }
    if (told.contains("was expecting double-quote to start field name")) {
      if (behind.startsWith("{") || behind.startsWith("[")) {
        return "the name of a field is missing in front of " + behind.charAt(0)
            + "; what holds several things without names is a list, and begins with [";
      }
      return behind.startsWith("}")
          ? "the comma in front of } is one too many"
          : "the name of a field goes in quotation marks, was " + word(behind);
    }
    if (told.startsWith("Unrecognized token")) {
      return told.replaceFirst("^Unrecognized token ('[^']*').*", "$1")
          + " is no word here; type true or false, or put a text in quotation marks";
    }
    if (told.startsWith("Illegal unquoted character")) {
      return "a line end or tab stands in a text; close its quotation mark, \", on its line";
    }
    if (told.contains("end-of-input")) {
      return "it ends too soon; a quotation mark, ] or } is not closed";
    }
    return told;
  }

  /** The text that stands last, with its quotation marks. */
  private static String lastText(String before) {
    Matcher last = LAST_TEXT.matcher(before);
    return last.find() ? last.group(1) : "the colon";
  }

  private static String word(String behind) {
    Matcher word = WORD.matcher(behind);
    return word.find() ? word.group() : "the end";
  }
}
