package org.airfit.jobsheet;

import org.airfit.safety.Caution;

/** The cards of a job as text, without their figures. */
final class CardText {

  private static final String RULE = "=".repeat(78);

  private CardText() {}

  static String of(CardSheet sheet) {
    StringBuilder out = new StringBuilder(sheet.job().title()).append('\n');
    out.append("Pencil cards for ").append(sheet.job().customer()).append('\n');
    for (CardSheet.Card card : sheet.cards()) {
      out.append('\n').append(RULE).append('\n').append(card.question()).append(". ");
      card.basis().forEach(each -> out.append('\n').append(each));
      out.append(card.basis().isEmpty() ? "" : "\n\n").append(card.card().toText());
      for (Caution caution : card.cautions()) {
        out.append("\n  ").append(caution.title()).append(". ").append(caution.text());
        out.append("\n    [").append(caution.source()).append("]\n");
      }
    }
    sheet.without().forEach(each -> out.append('\n').append(each).append('\n'));
    if (sheet.cards().isEmpty()) {
      out.append("\nThis job has no answer that a card can hold.\n");
    }
    return out.append('\n').toString();
  }
}
