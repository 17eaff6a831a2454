package org.airfit.jobsheet;

import java.util.List;
import java.util.Optional;
import org.airfit.quantity.Money;
import org.airfit.select.BillLine;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Proposal;

/** The bill of materials as a table for a terminal, each line with its reason below it. */
final class BillText {

  /** Where no catalogue calls it anything. */
  private static final String NO_ID = "-";

  private static final int WIDTH = 100;
  private static final int LEAST_NAME = 20;

  private final Lines out;
  private final List<BillLine> lines;
  private final boolean isPriced;
  private final int id;
  private final int each;
  private final int price;

  private BillText(Lines out, BillOfMaterials bill) {
    this.out = out;
    this.lines = bill.lines();
    this.isPriced = bill.total().isPresent();
    this.id = widest("part", lines.stream().map(BillText::id).toList());
    this.each =
        widest("each", lines.stream().map(line -> money(line, line.priceEach())).toList());
    this.price =
        widest("price", lines.stream().map(line -> money(line, line.price())).toList());
  }

  /** Writes the table, what it sums to, and what must still be asked for it. */
  static void write(Lines out, BillOfMaterials bill, Proposal proposal) {
    new BillText(out, bill).table();
    InWords.together(bill, proposal).ifPresent(sum -> out.wrapped("", sum));
    bill.questions().forEach(question -> out.wrapped("  - ", "To be asked: " + question));
  }

  private static int widest(String heading, List<String> cells) {
    return Math.max(
        heading.length(), cells.stream().mapToInt(String::length).max().orElse(0));
  }

  private void table() {
    row("pcs", "part", "what", "each", "price");
    for (BillLine line : lines) {
      row(
          Integer.toString(line.quantity()),
          id(line),
          line.name() + (line.existing() ? " (there already)" : ""),
          money(line, line.priceEach()),
          money(line, line.price()));
      out.wrapped(" ".repeat(8 + id), line.reason() + ".");
    }
  }

  /** A name that is too long for its column gets the line to itself. */
  private void row(String pieces, String part, String name, String one, String all) {
    int columns = isPriced ? each + price + 4 : 0;
    int room = Math.max(LEAST_NAME, WIDTH - 6 - id - columns);
    String front = "  " + right(pieces, 3) + " " + left(part, id) + " ";
    String money = isPriced ? "  " + right(one, each) + "  " + right(all, price) : "";
    if (name.length() > room) {
      out.wrapped(front, name);
      out.line(left("", front.length() + room) + money);
    } else {
      out.line(front + left(name, room) + money);
    }
  }

  private static String left(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }

  private static String right(String text, int width) {
    return " ".repeat(Math.max(0, width - text.length())) + text;
  }

  /** What the catalogue calls it; nothing where it has none, or the job names a part that is there. */
  static String id(BillLine line) {
    return line.id().filter(id -> !id.equals(line.name())).orElse(NO_ID);
  }

  /** Nothing for what is there already, a question mark for what nobody told. */
  static String money(BillLine line, Optional<Money> amount) {
    return amount.map(known -> known.format(2)).orElse(line.existing() ? "" : "?");
  }
}
