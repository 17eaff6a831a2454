package org.airfit.joint;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.joint.EndScanner.Amount;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadForm;
import org.jspecify.annotations.Nullable;

/**
 * Reads a pipe thread as people write it, from left to right and once: numbers are a size and its threads per inch,
 * words are the thread and its gender, in any order. What is missing is named.
 */
final class PipeReader {

  private static final String EXAMPLES = EndScanner.EXAMPLES;

  private static final Map<String, ThreadFamily> FAMILIES = Map.ofEntries(
      Map.entry("NPT", ThreadFamily.NPT),
      Map.entry("NPTF", ThreadFamily.NPTF),
      Map.entry("NPSC", ThreadFamily.NPSC),
      Map.entry("NPSM", ThreadFamily.NPSM),
      Map.entry("NPSF", ThreadFamily.NPSF),
      Map.entry("NPSI", ThreadFamily.NPSI),
      Map.entry("BSPT", ThreadFamily.BSPT),
      Map.entry("BSPP", ThreadFamily.BSPP),
      Map.entry("R", ThreadFamily.BSPT),
      Map.entry("RC", ThreadFamily.BSPT),
      Map.entry("RP", ThreadFamily.RP),
      Map.entry("G", ThreadFamily.BSPP));

  /**
   * What the trade writes with M or F in front, beside the letters of the standards: iron pipe and pipe thread mean
   * NPT.
   */
  private static final Map<String, ThreadFamily> BEHIND_GENDER = Map.of(
      "NPT", ThreadFamily.NPT,
      "IP", ThreadFamily.NPT,
      "PT", ThreadFamily.NPT,
      "NPTF", ThreadFamily.NPTF,
      "NPSC", ThreadFamily.NPSC,
      "NPSM", ThreadFamily.NPSM,
      "NPSF", ThreadFamily.NPSF,
      "NPSI", ThreadFamily.NPSI,
      "BSPT", ThreadFamily.BSPT,
      "BSPP", ThreadFamily.BSPP);

  /** Letters that do not say which thread, and what to write instead. */
  private static final Map<String, String> UNCLEAR = Map.of(
      "BSP", "BSP is either R (taper, Rc inside) or G (parallel): which of them?",
      "PT", "PT is the old name of R (Rc inside), 55° taper",
      "PF", "PF is the old name of G, 55° parallel",
      "PS", "PS is the old name of Rp, 55° parallel inside",
      "PTF", "PTF is NPTF or PTF-SAE SHORT: which of them?");

  private static final Map<Double, NominalThreadSize> SIZES = sizes();

  private final String text;
  private final EndScanner scanner;

  private @Nullable Amount size;
  private @Nullable Amount threadsPerInch;
  private @Nullable ThreadFamily family;
  private String familyLetters = "";
  private int familyAt;
  private @Nullable Gender gender;
  private int genderAt;
  private boolean turnsFreely;

  private PipeReader(String text, String masked) {
    this.text = text;
    this.scanner = new EndScanner(masked, EXAMPLES);
  }

  /** Reads a pipe thread from {@code masked}, where what does not belong to it is blank; refuses in {@code text}. */
  static EndWords.Pipe read(String text, String masked) {
    return new PipeReader(text, masked).thread();
  }

  private static Map<Double, NominalThreadSize> sizes() {
    Map<Double, NominalThreadSize> sizes = new HashMap<>();
    for (NominalThreadSize size : NominalThreadSize.values()) {
      sizes.put(new EndScanner(size.label(), EXAMPLES).amount().value(), size);
    }
    return sizes;
  }

  private QuantityFormatException refused(int position, String problem, String accepted) {
    return new QuantityFormatException(text, position, problem, accepted);
  }

  private QuantityFormatException refused(int position, String problem) {
    return refused(position, problem, EXAMPLES);
  }

  private EndWords.Pipe thread() {
    for (scanner.skipBlanks(); !scanner.isAtEnd(); scanner.skipBlanks()) {
      if (scanner.isAtNumber()) {
        size();
      } else if (scanner.isAtLetter()) {
        word();
      } else if (!scanner.quotationMark()) {
        throw refused(
            scanner.at(),
            scanner.next() == ','
                ? "a comma means different things in different places: write 0.25 with a point"
                : "'" + scanner.next() + "' is not understood");
      }
    }
    return told();
  }

  /** A size and, behind a dash, the threads per inch: 1/4, 1-1/4, 1 1/4 in, 1/4-18, 1-11 1/2. */
  private void size() {
    if (size != null) {
      throw refused(scanner.at(), "a second size");
    }
    size = scanner.amount();
    scanner.inchMark();
    if (scanner.dash()) {
      if (scanner.isAtNumber()) {
        threadsPerInch = scanner.amount();
      } else {
        scanner.inchMark();
      }
    }
  }

  private void word() {
    int start = scanner.at();
    String word = scanner.letters();
    if (word.equals("PTF") && scanner.follows("SAE") && scanner.follows("SHORT")) {
      family(ThreadFamily.PTF_SAE_SHORT, "PTF-SAE SHORT", start);
      return;
    }
    if (word.equals("SWIVEL")) {
      turnsFreely = true;
      return;
    }
    for (Gender each : List.of(Gender.FEMALE, Gender.MALE)) {
      String name = each.label().toUpperCase(Locale.ROOT);
      if (word.endsWith(name)) {
        gender(each, start);
        word = word.substring(0, word.length() - name.length());
        break;
      }
    }
    if (!word.isEmpty()) {
      letters(word, start);
    }
  }

  private void letters(String word, int start) {
    ThreadFamily known = FAMILIES.get(word);
    if (known != null) {
      family(known, word, start);
      return;
    }
    String unclear = UNCLEAR.get(word);
    if (unclear != null) {
      throw refused(start, unclear);
    }
    Gender first = genderOf(word.charAt(0));
    ThreadFamily behind = BEHIND_GENDER.get(word.substring(1));
    if (first != null && (word.length() == 1 || behind != null)) {
      gender(first, start);
      if (behind != null) {
        family(behind, word.substring(1), start);
      }
      return;
    }
    throw refused(start, KnownWords.notUnderstood(text.substring(start, scanner.at())));
  }

  private static @Nullable Gender genderOf(char letter) {
    return letter == 'M' ? Gender.MALE : letter == 'F' ? Gender.FEMALE : null;
  }

  private void family(ThreadFamily read, String asWritten, int start) {
    if (family != null) {
      throw refused(start, "a second thread");
    }
    family = read;
    familyLetters = asWritten;
    familyAt = start;
  }

  private void gender(Gender read, int start) {
    if (gender != null && gender != read) {
      throw refused(start, gender.label() + " and " + read.label() + " at once");
    }
    gender = read;
    genderAt = start;
  }

  private EndWords.Pipe told() {
    Gender meant = gender == null ? byLetters() : gender;
    List<String> missing = new ArrayList<>();
    if (size == null) {
      missing.add("the size");
    }
    if (family == null) {
      missing.add("the thread, such as NPT or G,");
    }
    if (meant == null) {
      missing.add("male or female");
    }
    if (size != null && threadsPerInch != null && family == null) {
      requireNoUnified(size, threadsPerInch);
    }
    if (size == null || family == null || meant == null) {
      boolean nothing = size == null && family == null && gender == null;
      throw refused(
          text.length(),
          nothing
              ? "no end of a part"
              : String.join(" and ", missing) + (missing.size() == 1 ? " is" : " are")
                  + " missing");
    }
    if (familyLetters.equals("RC") && meant == Gender.MALE) {
      throw refused(genderAt, "Rc is only female", "R for the male taper thread");
    }
    ThreadDesignation thread = designation(size, family, meant);
    requireThreadsPerInch(thread);
    return new EndWords.Pipe(thread, turnsFreely, remark(thread));
  }

  /** A unified thread such as 9/16-18 has several forms that seal, and none by itself. */
  private void requireNoUnified(Amount diameter, Amount count) {
    Gender meant = gender == null ? Gender.MALE : gender;
    ThreadNames.unified(diameter.value(), count.value(), meant).ifPresent(thread -> {
      throw refused(
          text.length(),
          "the thread does not tell what seals: "
              + FormRules.of(thread).stream()
                  .map(form -> "\"" + FormText.label(thread, form) + "\"")
                  .collect(Collectors.joining(" or "))
              + "? Look at the part");
    });
  }

  /** R is male and Rc female by their letters, as is what the standards have only inside. */
  private @Nullable Gender byLetters() {
    if (familyLetters.equals("R")) {
      return Gender.MALE;
    }
    boolean onlyInside = familyLetters.equals("RC") || (family != null && !family.has(Gender.MALE));
    return onlyInside ? Gender.FEMALE : null;
  }

  private ThreadDesignation designation(Amount typed, ThreadFamily read, Gender meant) {
    NominalThreadSize named = SIZES.get(typed.value());
    if (named == null) {
      throw refused(
          typed.start(),
          "there is no such nominal thread size",
          "sizes " + NominalThreadSize.ONE_SIXTEENTH + " to " + NominalThreadSize.FOUR
              + ", such as " + read.symbol(meant) + " in " + read.sizes());
    }
    try {
      return new ThreadDesignation(read, named, meant);
    } catch (IllegalArgumentException e) {
      throw refused(familyAt, String.valueOf(e.getMessage()));
    }
  }

  private void requireThreadsPerInch(ThreadDesignation thread) {
    Amount typed = threadsPerInch;
    double standard = thread.threadsPerInch();
    if (typed == null || typed.value() == standard) {
      return;
    }
    String count = Digits.plain(typed.value());
    throw refused(
        typed.start(),
        thread.label() + " has " + Digits.plain(standard) + " threads per inch, not " + count,
        withThreadsPerInch(thread)
            + othersWith(typed.value(), thread)
            + asFraction()
                .map(size -> ", or size " + size + " if that is meant")
                .orElse(""));
  }

  /** The sizes of the same thread that have a count of threads per inch; blank where none has. */
  private static String othersWith(double count, ThreadDesignation thread) {
    List<String> sizes = thread.family().sizes().stream()
        .filter(size ->
            new ThreadDesignation(thread.family(), size, thread.gender()).threadsPerInch() == count)
        .map(NominalThreadSize::toString)
        .toList();
    int last = sizes.size() - 1;
    if (last < 0) {
      return "";
    }
    return ", or size "
        + (last == 0
            ? sizes.get(0) + ", which has "
            : String.join(", ", sizes.subList(0, last)) + " or " + sizes.get(last)
                + ", which have ")
        + Digits.plain(count) + " threads per inch";
  }

  private static String withThreadsPerInch(ThreadDesignation thread) {
    String size = thread.size() + "-" + Digits.plain(thread.threadsPerInch());
    String symbol = thread.family().symbol(thread.gender());
    return thread.family().form() == ThreadForm.FLAT_60 ? size + " " + symbol : symbol + " " + size;
  }

  /** The size that the text would name with a stroke for its dash: 3/8 for 3-8. */
  private Optional<NominalThreadSize> asFraction() {
    return size != null && size.isWhole() && threadsPerInch != null
        ? Optional.ofNullable(SIZES.get(size.value() / threadsPerInch.value()))
        : Optional.empty();
  }

  private Optional<String> remark(ThreadDesignation thread) {
    if (familyLetters.equals("R") && thread.gender() == Gender.FEMALE) {
      return Optional.of(
          "read as " + thread.label() + ": R marks the male thread, the female taper "
              + "thread is marked Rc and the female parallel one Rp; write Rp " + thread.size()
              + " if that is meant");
    }
    return asFraction()
        .map(fraction -> "read as size " + thread.size() + " with "
            + Digits.plain(thread.threadsPerInch())
            + " threads per inch, as the standard writes it, and not as size " + fraction);
  }
}
