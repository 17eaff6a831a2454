package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.quantity.Money;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Everything that a {@link Proposal} takes to be built: its parts, and what their joints, hoses and pipe need beside
 * them.
 *
 * <p>The parts come first, from the outlet to the tool. Then, for every joint as if it were made up new:
 *
 * <ul>
 *   <li>the adapters without which two ends do not meet, by their standard shape, or that of the catalogue with the
 *       same two ends;
 *   <li>a clamp or ferrule where a hose goes on a barb, by the outside diameter of the hose; where that was not told, a
 *       question;
 *   <li>sealant for taper threads, a washer where a G thread seals between faces, nothing for what seals by itself.
 * </ul>
 *
 * <p>Then a restraint across every joint of a hose of more than 1/2 in bore (common practice, no source), a hose fuse
 * where the safety rules of the job ask for one, a drain where a pipe carries air that no dryer dried, and the
 * {@link Extra}s asked for. One roll or bottle of sealant is taken to do for all joints, which is a choice of this
 * project. Of the accessories that will do the cheapest is taken, what the customer has before it.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class BillOfMaterials implements Worked {

  private static final Source SUM = Source.derived("pieces times their price, summed");
  private static final Symbol TOTAL = Symbol.of("K", ValueKind.MONEY);

  /** Behind every sum of prices. */
  private static final String TAX = "Tax is left to the shop.";

  private final List<BillLine> lines;
  private final List<String> questions;

  private BillOfMaterials(List<BillLine> lines, List<String> questions) {
    this.lines = List.copyOf(lines);
    this.questions = List.copyOf(questions);
  }

  /**
   * Obtains the bill of a proposal.
   *
   * @param proposal the proposal, also a nearest miss
   * @param catalogue the catalogue whose accessories are for sale
   * @return the bill
   */
  public static BillOfMaterials of(Proposal proposal, Catalogue catalogue) {
    return of(proposal, catalogue, UnitSystem.SI);
  }

  /**
   * Obtains the bill of a proposal with the numbers of its reasons in other units.
   *
   * @param proposal the proposal, also a nearest miss
   * @param catalogue the catalogue whose accessories are for sale
   * @param units the units
   * @return the bill
   */
  public static BillOfMaterials of(Proposal proposal, Catalogue catalogue, UnitSystem units) {
    Objects.requireNonNull(proposal, "proposal");
    Objects.requireNonNull(catalogue, "catalogue");
    Objects.requireNonNull(units, "units");
    Assembly a = proposal.assembly();
    AccessoryShelf shelf = new AccessoryShelf(a.requirement(), catalogue);
    BillJoints joints = new BillJoints(a, catalogue, shelf, units);
    BillExtras extras = new BillExtras(a, shelf);
    List<BillLine> lines = new ArrayList<>(PartsInWords.of(a, units));
    lines.addAll(joints.lines());
    lines.addAll(extras.lines());
    LinkedHashSet<String> questions = new LinkedHashSet<>(joints.questions());
    questions.addAll(extras.questions());
    return new BillOfMaterials(lines, List.copyOf(questions));
  }

  /** {@return the lines: the parts from the outlet to the tool first, then what goes with them; never empty} */
  public List<BillLine> lines() {
    return lines;
  }

  /**
   * Finds the lines of one kind.
   *
   * @param kind the kind
   * @return its lines, in the order of the bill
   */
  public List<BillLine> lines(BillLine.Kind kind) {
    Objects.requireNonNull(kind, "kind");
    return lines.stream().filter(line -> line.kind() == kind).toList();
  }

  /** {@return what must be asked before the bill is complete, in plain sentences} */
  public List<String> questions() {
    return questions;
  }

  /** {@return the lines to buy whose price is not known} */
  public List<BillLine> unpriced() {
    return lines.stream().filter(BillLine::isUnpriced).toList();
  }

  /** {@return what all lines to buy cost together, as far as prices are known; empty if none is} */
  public Optional<Money> total() {
    return lines.stream().flatMap(line -> line.price().stream()).reduce(Money::plus);
  }

  /**
   * What the shop earns on all lines to buy: their prices less what they cost the shop. Empty if price or cost of one
   * is not known, or if there is nothing to buy.
   */
  Optional<Money> margin() {
    Money margin = null;
    for (BillLine line : lines) {
      if (!line.existing()) {
        if (line.price().isEmpty() || line.cost().isEmpty()) {
          return Optional.empty();
        }
        Money cost = line.cost().get();
        Money less = new Money(cost.amount().negate(), cost.currency());
        Money earned = line.price().get().plus(less);
        margin = margin == null ? earned : margin.plus(earned);
      }
    }
    return Optional.ofNullable(margin);
  }

  /**
   * {@return the total in words, such as "96.40 USD. Tax is left to the shop." or "96.40 USD without clamp or ferrule
   * for 3/8 in hose, of unknown price. Tax is left to the shop."; empty if no price is known}
   */
  public Optional<String> totalInWords() {
    String without =
        unpriced().stream().map(BillLine::name).distinct().collect(Collectors.joining(", "));
    return total()
        .map(known -> known.format(2)
            + (without.isEmpty() ? "" : " without " + without + ", of unknown price") + ". "
            + TAX);
  }

  /**
   * Tells how the total was summed.
   *
   * @param units the units of the numbers; money has but one
   */
  @Override
  public Working working(UnitSystem units) {
    Working.Builder out = Working.titled("Total of the bill of materials", units);
    List<BillLine> priced =
        lines.stream().filter(line -> line.price().isPresent()).toList();
    unpriced().stream()
        .map(BillLine::name)
        .distinct()
        .forEach(name -> out.note("The price of " + name + " is not known."));
    out.note(TAX);
    if (priced.isEmpty()) {
      return out.answer("No price is known.").build();
    }
    List<Symbol> symbols = new ArrayList<>(List.of(TOTAL));
    StringBuilder sum = new StringBuilder("⟨K⟩ =");
    for (int i = 0; i < priced.size(); i++) {
      Symbol count = Symbol.of("n" + (i + 1), ValueKind.NUMBER);
      Symbol each = Symbol.of("p" + (i + 1), ValueKind.MONEY);
      symbols.add(count);
      symbols.add(each);
      sum.append(i == 0 ? " ⟨" : " + ⟨").append(count.text()).append("⟩ × ⟨");
      sum.append(each.text()).append("⟩");
      BillLine line = priced.get(i);
      Money price = line.priceEach().orElseThrow();
      out.given(count, line.quantity(), 1).given(each, price.amount().doubleValue(), 5);
    }
    double total = total().orElseThrow().amount().doubleValue();
    Formula formula = Formula.of("Total", sum.toString(), SUM, symbols.toArray(new Symbol[0]));
    return out.step(formula, total, 5)
        .answer(TOTAL)
        .note("Money is in " + total().orElseThrow().currency() + ".")
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof BillOfMaterials that
        && lines.equals(that.lines)
        && questions.equals(that.questions);
  }

  @Override
  public int hashCode() {
    return Objects.hash(lines, questions);
  }

  /** {@return how many lines it has and what they cost together} */
  @Override
  public String toString() {
    return "Bill of " + lines.size() + " lines"
        + totalInWords().map(sum -> ": " + sum).orElse("");
  }
}
