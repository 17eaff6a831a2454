package org.airfit.flow;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A piece of a rating, such as "5 psi drop": the value in it, the words around it, and where the value stands.
 *
 * @param value what is left without the words, such as "5 psi"
 * @param at where that stands in the whole text
 * @param roles what the words say it is
 */
record RatingClause(String value, int at, Set<Role> roles) {

  /** What the words around a value say of it. */
  enum Role {
    /** It stands behind "at" or "@". */
    AT,
    /** The pressure in front. */
    INLET,
    /** The pressure behind. */
    OUTLET,
    /** The pressure lost. */
    DROP,
    /** Into the open. */
    FULL,
    /** The drop at which a check valve opens. */
    OPENS
  }

  /** What words say, the longer of two alike first; those without a role are only left out. */
  private record Word(String word, Role role, boolean speaks) {}

  private static final List<Word> WORDS = List.of(
      new Word("free discharge", Role.FULL, true),
      new Word("full flow", Role.FULL, true),
      new Word("free flow", Role.FULL, true),
      new Word("wide open", Role.FULL, true),
      new Word("to atmosphere", Role.FULL, true),
      new Word("into the open", Role.FULL, true),
      new Word("pressure drop", Role.DROP, true),
      new Word("pressure loss", Role.DROP, true),
      new Word("differential", Role.DROP, true),
      new Word("delta p", Role.DROP, true),
      new Word("drop", Role.DROP, true),
      new Word("loss", Role.DROP, true),
      new Word("Δp", Role.DROP, true),
      new Word("∆p", Role.DROP, true),
      new Word("dp", Role.DROP, true),
      new Word("inlet", Role.INLET, true),
      new Word("supply", Role.INLET, true),
      new Word("upstream", Role.INLET, true),
      new Word("from", Role.INLET, true),
      new Word("p1", Role.INLET, true),
      new Word("outlet", Role.OUTLET, true),
      new Word("downstream", Role.OUTLET, true),
      new Word("to", Role.OUTLET, true),
      new Word("p2", Role.OUTLET, true),
      new Word("opens", Role.OPENS, true),
      new Word("at", Role.AT, true),
      new Word("@", Role.AT, true),
      new Word("effective area", Role.AT, false),
      new Word("flow coefficient", Role.AT, false),
      new Word("sonic conductance", Role.AT, false),
      new Word("free air", Role.AT, false),
      new Word("nominal", Role.AT, false),
      new Word("flow", Role.AT, false),
      new Word("air", Role.AT, false),
      new Word("max", Role.AT, false),
      new Word("pressure", Role.AT, false),
      new Word("rated", Role.AT, false),
      new Word("with", Role.AT, false),
      new Word("and", Role.AT, false),
      new Word("of", Role.AT, false),
      new Word("a", Role.AT, false));

  /** The words before which a new piece begins. */
  private static final List<String> BEGIN =
      List.of("at", "@", "with", "and", "from", "to", "b", "m", "xt");

  /** Cuts a row of a rating, which begins at {@code offset} of the whole text, into its pieces. */
  static List<RatingClause> of(String row, int offset) {
    List<RatingClause> clauses = new ArrayList<>();
    int from = 0;
    int depth = 0;
    boolean counted = false; // whether a number with a unit stands in the piece so far
    for (int i = 0; i < row.length(); i++) {
      char c = row.charAt(i);
      depth += c == '(' ? 1 : c == ')' ? -1 : 0;
      if (depth > 0) {
        continue;
      }
      if (c == ',' || (c == ':' && counted)) {
        add(clauses, row, from, i, offset);
        from = i + 1;
        counted = false;
      } else if (isWordStart(row, i)) {
        String word = wordAt(row, i);
        boolean isNumber = isDigit(word.charAt(0)) || (word.charAt(0) == '.' && word.length() > 1);
        if ((counted && isNumber && !isNumberPart(row, i))
            || (BEGIN.contains(word.toLowerCase(Locale.ROOT))
                && i > from
                && begins(row, i, word))) {
          add(clauses, row, from, i, offset);
          from = i;
          counted = false;
        }
        counted |= isNumber;
      }
    }
    add(clauses, row, from, row.length(), offset);
    return clauses;
  }

  /** A figure such as b begins only before a number; the words that join pieces always do. */
  private static boolean begins(String row, int at, String word) {
    if (word.length() > 2
        || word.equals("@")
        || word.equalsIgnoreCase("at")
        || word.equalsIgnoreCase("to")) {
      return true;
    }
    int next = at + word.length();
    while (next < row.length() && " =:".indexOf(row.charAt(next)) >= 0) {
      next++;
    }
    return next < row.length() && (isDigit(row.charAt(next)) || row.charAt(next) == '.');
  }

  /** Whether a number goes on with what stands before it: "1 1/4", "DIN 1343", "ISO 8778". */
  private static boolean isNumberPart(String row, int at) {
    int end = at - 1;
    while (end > 0 && row.charAt(end) == ' ') {
      end--;
    }
    return isDigit(row.charAt(end))
        || row.startsWith("DIN", end - 2)
        || row.startsWith("ISO", end - 2);
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isWordStart(String row, int at) {
    return row.charAt(at) != ' '
        && (at == 0 || " ,:)@".indexOf(row.charAt(at - 1)) >= 0 || row.charAt(at) == '@');
  }

  private static String wordAt(String row, int at) {
    if (row.charAt(at) == '@') {
      return "@";
    }
    int end = at;
    while (end < row.length() && " ,:=@".indexOf(row.charAt(end)) < 0) {
      end++;
    }
    return row.substring(at, Math.max(end, at + 1));
  }

  private static void add(List<RatingClause> clauses, String row, int from, int to, int offset) {
    StringBuilder rest = new StringBuilder(row.substring(from, to));
    Set<Role> roles = EnumSet.noneOf(Role.class);
    for (Word word : WORDS) {
      int at = find(rest, word.word());
      while (at >= 0) {
        for (int i = at; i < at + word.word().length(); i++) {
          rest.setCharAt(i, ' ');
        }
        if (word.speaks()) {
          roles.add(word.role());
        }
        at = find(rest, word.word());
      }
    }
    int first = 0;
    while (first < rest.length() && " =:".indexOf(rest.charAt(first)) >= 0) {
      first++;
    }
    String value = rest.substring(first).strip();
    if (!value.isEmpty() || !roles.isEmpty()) {
      clauses.add(new RatingClause(value, offset + from + first, Set.copyOf(roles)));
    }
  }

  /** Where a whole word stands, or -1; "dp" also where a sign stands behind it. */
  private static int find(StringBuilder text, String word) {
    for (int i = 0; i + word.length() <= text.length(); i++) {
      if (text.toString().regionMatches(true, i, word, 0, word.length())
          && (i == 0 || text.charAt(i - 1) == ' ' || text.charAt(i - 1) == '@')
          && (i + word.length() == text.length()
              || " =:".indexOf(text.charAt(i + word.length())) >= 0
              || word.equals("@"))) {
        return i;
      }
    }
    return -1;
  }

  boolean is(Role role) {
    return roles.contains(role);
  }
}
