package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.airfit.files.DayJob;
import org.airfit.files.DiagnosisJob;
import org.airfit.files.InventoryJob;
import org.airfit.files.Job;
import org.airfit.files.LeakJob;
import org.airfit.files.PriceListJob;
import org.airfit.files.Printable;
import org.airfit.files.Refusal;
import org.airfit.files.WaterJob;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;

/**
 * The sheet that answers a file, in its parts: for a screen or a program that shows them in its own way. Text and page
 * are written only when they are asked for.
 */
public final class SheetParts {

  private final String title;
  private final String customer;
  private final List<Answer> inShort;
  private final List<String> limits;
  private final List<Caution> cautions;
  private final Supplier<String> text;
  private final Supplier<String> page;

  SheetParts(
      String title,
      String customer,
      List<Answer> inShort,
      List<String> limits,
      List<Caution> cautions,
      Supplier<String> text,
      Supplier<String> page) {
    this.title = title;
    this.customer = customer;
    this.inShort = List.copyOf(inShort);
    this.limits = List.copyOf(limits);
    this.cautions = List.copyOf(cautions);
    this.text = text;
    this.page = page;
  }

  /** Answers begin with a capital where they stand alone. */
  private static List<Answer> capital(List<Answer> lines) {
    return lines.stream()
        .map(line -> new Answer(line.what(), InWords.capital(line.answer())))
        .toList();
  }

  /**
   * Answers a day of a plant.
   *
   * @param job the plant and its users
   * @return the sheet
   */
  public static SheetParts of(DayJob job) {
    DaySheet sheet = DaySheet.of(job);
    DayWords words = new DayWords(sheet);
    return new SheetParts(
        job.title(),
        job.customer(),
        capital(words.inShort().stream()
            .map(line -> new Answer(line.what(), line.said()))
            .toList()),
        words.limits(),
        sheet.day().cautions(),
        () -> DayText.of(sheet),
        () -> DayPage.of(sheet));
  }

  /**
   * Answers readings of gauges.
   *
   * @param job the run and the readings
   * @return the sheet
   */
  public static SheetParts of(DiagnosisJob job) {
    DiagnosisSheet sheet = DiagnosisSheet.of(job);
    return new SheetParts(
        job.title(),
        job.customer(),
        capital(sheet.inShort()),
        List.of(DiagnosisSheet.LIMITS),
        sheet.cautions(),
        () -> DiagnosisText.of(sheet),
        () -> DiagnosisPage.of(sheet));
  }

  /**
   * Answers a file of water and purity.
   *
   * @param job what is asked
   * @return the sheet
   */
  public static SheetParts of(WaterJob job) {
    WaterSheet sheet = WaterSheet.of(job);
    return new SheetParts(
        job.title(),
        job.customer(),
        capital(sheet.inShort()),
        WaterSheet.LIMITS,
        sheet.cautions(),
        () -> WaterText.of(sheet),
        () -> WaterPage.of(sheet));
  }

  /**
   * Answers a ledger of leaks.
   *
   * @param job the ledger
   * @return the sheet
   */
  public static SheetParts of(LeakJob job) {
    return of(job, LeakText.inShort(job));
  }

  private static SheetParts of(LeakJob job, List<Answer> inShort) {
    return new SheetParts(
        job.title(),
        job.customer(),
        capital(inShort),
        LeakText.notes(job),
        job.ledger().cautions(job.units()),
        () -> LeakText.of(job, inShort),
        () -> LeakPage.of(job, inShort));
  }

  /**
   * Tells what one cooler takes out of the air.
   *
   * @param job a file of water and purity of one train with one stage, that cooler
   * @return the sheet of that file, in other words in short
   * @throws IllegalArgumentException if it has more than one train or stage
   */
  public static SheetParts ofCooler(WaterJob job) {
    WaterSheet sheet = WaterSheet.of(job);
    if (job.trains().size() != 1 || job.trains().get(0).treatment().along().size() != 1) {
      throw new IllegalArgumentException(
          "trains and stages of a cooler must be 1 each, were " + job.trains().size() + " and "
              + job.trains().get(0).treatment().along().size());
    }
    List<Answer> lines = sheet.ofCooler();
    return new SheetParts(
        job.title(),
        job.customer(),
        capital(lines),
        WaterSheet.LIMITS,
        sheet.cautions(),
        () -> WaterText.of(sheet, lines),
        () -> WaterPage.of(sheet, lines));
  }

  /**
   * Tells what one leak costs, and when its repair is paid back.
   *
   * @param job a ledger of that leak alone
   * @return the sheet of that ledger, in other words in short
   * @throws IllegalArgumentException if the ledger does not have one leak, open
   */
  public static SheetParts ofLeak(LeakJob job) {
    if (job.ledger().leaks().size() != 1 || job.ledger().entries().size() != 1) {
      throw new IllegalArgumentException(
          "leaks of the ledger must be 1, open, were " + job.ledger().leaks().size());
    }
    return of(job, LeakText.ofOne(job));
  }

  /**
   * Answers an inventory of couplings.
   *
   * @param job the inventory
   * @return the sheet
   */
  public static SheetParts of(InventoryJob job) {
    InventorySheet sheet = InventorySheet.of(job);
    return new SheetParts(
        job.title(),
        job.customer(),
        capital(sheet.inShort()),
        InventorySheet.LIMITS,
        sheet.cautions(),
        () -> InventoryText.of(sheet),
        () -> InventoryPage.of(sheet));
  }

  /**
   * Answers what is asked of a price list.
   *
   * @param job the list and the jobs that come
   * @return the sheet
   */
  public static SheetParts of(PriceListJob job) {
    PriceListSheet sheet = PriceListSheet.of(job);
    return new SheetParts(
        job.title(),
        job.customer(),
        capital(sheet.inShort()),
        sheet.limits(),
        sheet.cautions(),
        () -> PriceListText.of(sheet),
        () -> PriceListPage.of(sheet));
  }

  /**
   * Writes the answers of a job as cards to follow with pencil and ruler.
   *
   * @param job the job
   * @return the cards, each with its answer in short; no line where the job has none that a card can hold
   */
  public static SheetParts cards(Job job) {
    CardSheet sheet = CardSheet.of(JobSheet.of(job));
    List<Answer> inShort = new ArrayList<>();
    Set<String> limits = new LinkedHashSet<>(sheet.without());
    Set<Caution> cautions = new LinkedHashSet<>();
    for (CardSheet.Card card : sheet.cards()) {
      List<String> said = new ArrayList<>(card.basis());
      said.addAll(card.card().inWords());
      inShort.add(new Answer(card.question(), said.get(0)));
      limits.addAll(card.card().rules());
      // of several cards the one that defers to codes and makers stays last
      cautions.removeIf(card.cautions()::contains);
      cautions.addAll(card.cautions());
    }
    return new SheetParts(
        job.title(),
        job.customer(),
        capital(inShort),
        List.copyOf(limits),
        List.copyOf(cautions),
        () -> Printable.lines(CardText.of(sheet)),
        () -> CardPage.of(sheet));
  }

  /**
   * Refuses a file that is not for compressed air.
   *
   * @param refusal the refusal
   * @return its sheet: why, and what stands against it
   */
  public static SheetParts of(Refusal refusal) {
    List<Caution> cautions = List.of(refusal.caution(), SafetyRules.usFederal().deference());
    return new SheetParts(
        refusal.title(),
        refusal.customer(),
        List.of(new Answer("Refused", refusal.reason())),
        List.of(),
        cautions,
        () -> refusal.reason() + "\n",
        () -> RefusalSheet.page(refusal, cautions));
  }

  /** {@return what it is about} */
  public String title() {
    return title;
  }

  /** {@return for whom it is} */
  public String customer() {
    return customer;
  }

  /** {@return the whole answer in a few lines, the main one first} */
  public List<Answer> inShort() {
    return inShort;
  }

  /** {@return what its numbers rest on and where they end, to be shown beside them} */
  public List<String> limits() {
    return limits;
  }

  /** {@return what must be minded, to be shown with it; last that local codes and makers come first} */
  public List<Caution> cautions() {
    return cautions;
  }

  /** {@return the sheet as the program prints it, with the working} */
  public String text() {
    return text.get();
  }

  /** {@return the sheet as one HTML file that needs no other} */
  public String page() {
    return page.get();
  }
}
