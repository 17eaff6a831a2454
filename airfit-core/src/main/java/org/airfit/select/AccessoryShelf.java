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
  private static final Comparator<Accessory> ORDER = Comparator.<Accessory, Boolean>comparing(
          each -> !each.facts().isExisting())
      .thenComparing(each -> each.facts().price().isEmpty())
      .thenComparing(each -> each.facts().price().map(Money::amount).orElse(BigDecimal.ZERO))
      .thenComparing(Accessory::name)
      .thenComparing(Accessory::id);

  private final Requirement job;
  private final List<Accessory> suited;

  AccessoryShelf(Requirement job, Catalogue catalogue) {
    this.job = job;
    this.suited = catalogue.accessories().stream()
        .filter(each -> stands(each.facts()))
        .sorted(ORDER)
        .toList();
  }

  private boolean stands(PartFacts facts) {
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
