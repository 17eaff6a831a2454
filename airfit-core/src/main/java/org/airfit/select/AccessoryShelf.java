package org.airfit.select;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.airfit.quantity.Money;

/**
 * The accessories of a catalogue that stand what a job asks of them: of what its maker tells, nothing is below the
 * highest pressure that can occur or outside the temperatures.
 */
final class AccessoryShelf {

  /** What the customer has first, then what has a price, the cheapest first, then by name. */
  static final Comparator<PartFacts> CHEAPEST = Comparator.<PartFacts, Boolean>comparing(
          each -> !each.isExisting())
      .thenComparing(each -> each.price().isEmpty())
      .thenComparing(each -> each.price().map(Money::amount).orElse(BigDecimal.ZERO))
      .thenComparing(PartFacts::name)
      .thenComparing(PartFacts::id);

  private final Requirement job;
  private final List<Accessory> suited;

  AccessoryShelf(Requirement job, Catalogue catalogue) {
    this.job = job;
    this.suited = catalogue.accessories().stream()
        .filter(each -> stands(each.facts()))
        .sorted(Comparator.comparing(Accessory::facts, CHEAPEST))
        .toList();
  }

  /** Whether what its maker tells of a piece is enough for the job; what is not told is no bar. */
  boolean stands(PartFacts facts) {
    return facts.rating().filter(job.pressures()::canExceed).isEmpty()
        && !PartChecks.isOutOfTemperature(job, facts);
  }

  /** The first of a kind that will do. */
  <T extends Accessory> Optional<T> find(Class<T> kind, Predicate<? super T> willDo) {
    return suited.stream()
        .filter(kind::isInstance)
        .map(kind::cast)
        .filter(willDo)
        .findFirst();
  }
}
