package org.airfit.joint;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Two ends that are to be joined, and the fewest adapters that join them soundly; of equally short chains the one with
 * the widest narrowest bore.
 *
 * <p>Every pair of ends that meets in it is sound by {@link Mating}. An adapter may be turned round, and used more than
 * once: a catalogue holds kinds of parts. It is searched breadth first, so that no shorter chain exists.
 *
 * <p>The fewest standard adapters between two ends:
 *
 * <pre>{@code
 * import org.airfit.joint.Chain;
 * import org.airfit.joint.End;
 * import org.airfit.joint.StandardAdapter;
 *
 * class FewestAdapters {
 *   public static void main(String[] args) {
 *     Chain<StandardAdapter> chain =
 *         Chain.between(End.parse("1/2 NPT male"), End.parse("1/4 NPT female"));
 *     System.out.println(chain.adapters()); // [female × male reducer 1/2 NPT female × 1/4 NPT male]
 *   }
 * }
 * }</pre>
 *
 * @param <A> the kind of adapter
 * @param from the end it starts at
 * @param to the end it shall reach
 * @param adapters the adapters between, from {@code from} on; empty where the ends meet directly or nothing joins them
 * @param matings every pair of ends that meets, from {@code from} on; where nothing joins them, only the two ends
 *     themselves
 */
public record Chain<A extends TwoEnded>(End from, End to, List<A> adapters, List<Mating> matings)
    implements Worked {

  /** More than three pieces on one another is a lever, not a joint. A choice of this project. */
  public static final int MOST_ADAPTERS = AdapterSearch.MOST_ADAPTERS;

  private static final Caution STACKED = new Caution(
      "Stacked adapters",
      "Every adapter more is a joint more that can leak, and a longer lever on the first thread, which vibration "
          + "and a dragged hose work on."
          + " Use one piece that does it all, or hold the end of the stack.",
      Source.commonPractice("no stacks of adapters"));

  /** A way that has been gone, up to the end it left open. */
  private record Way<A extends TwoEnded>(
      End open, List<A> adapters, List<Mating> matings, double boreMetres) {

    Way<A> through(A adapter, End far, Mating mating) {
      return new Way<>(
          far,
          longer(adapters, adapter),
          longer(matings, mating),
          Math.min(boreMetres, adapter.smallestBore().map(Length::metres).orElse(0.0)));
    }
  }

  /**
   * Copies the lists and checks that they belong together.
   *
   * @param from the end it starts at
   * @param to the end it shall reach
   * @param adapters the adapters between, from {@code from} on
   * @param matings every pair of ends that meets, from {@code from} on, one more than the adapters
   * @throws IllegalArgumentException if the pairs are not those of the ends and adapters in this order, or one of them
   *     beside an adapter is not sound
   */
  public Chain {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    adapters = List.copyOf(Objects.requireNonNull(adapters, "adapters"));
    matings = List.copyOf(Objects.requireNonNull(matings, "matings"));
    if (matings.size() != adapters.size() + 1) {
      throw new IllegalArgumentException("matings must be one more than the " + adapters.size()
          + " adapters, were " + matings.size());
    }
    requireInRow(from, to, adapters, matings);
  }

  private static void requireInRow(
      End from, End to, List<? extends TwoEnded> adapters, List<Mating> matings) {
    End open = from;
    for (int i = 0; i < matings.size(); i++) {
      Mating mating = matings.get(i);
      End next = i < adapters.size() ? mating.other() : to;
      if (!mating.one().equals(open) || !mating.other().equals(next)) {
        throw new IllegalArgumentException("mating " + (i + 1) + " must be of " + open + " and "
            + next + ", was of " + mating.one() + " and " + mating.other());
      }
      if (!adapters.isEmpty() && !mating.verdict().isSound()) {
        throw new IllegalArgumentException(
            "every mating of a chain through adapters must be sound, was " + mating);
      }
      if (i < adapters.size()) {
        open = farEnd(adapters.get(i), next);
      }
    }
  }

  private static End farEnd(TwoEnded adapter, End near) {
    if (adapter.one().equals(near)) {
      return adapter.other();
    }
    if (adapter.other().equals(near)) {
      return adapter.one();
    }
    throw new IllegalArgumentException("mating before " + adapter.name() + " must be of "
        + adapter.one() + " or " + adapter.other() + ", was of " + near);
  }

  /**
   * Looks for the shortest chain of standard adapters, whatever is in stock: what to ask for. The bores of its pieces
   * are not told by their shapes.
   *
   * @param from one end
   * @param to the other end
   * @return the chain, with the adapters of {@link Mating#between()}; or that no {@value #MOST_ADAPTERS} standard
   *     adapters join the ends
   */
  public static Chain<StandardAdapter> between(End from, End to) {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    Mating direct = Mating.of(from, to);
    List<StandardAdapter> adapters = direct.between();
    if (adapters.isEmpty()) {
      return new Chain<>(from, to, List.of(), List.of(direct));
    }
    List<Mating> matings = new ArrayList<>();
    return inRow(from, to, adapters, 0, matings)
        ? new Chain<>(from, to, adapters, matings)
        : new Chain<>(from, to, List.of(), List.of(direct));
  }

  /** Finds which way round each adapter stands; both may do, and then the first is taken. */
  private static boolean inRow(
      End open, End to, List<StandardAdapter> adapters, int next, List<Mating> matings) {
    if (next == adapters.size()) {
      matings.add(Mating.of(open, to));
      return Mating.isSound(open, to);
    }
    StandardAdapter adapter = adapters.get(next);
    for (End near : List.of(adapter.one(), adapter.other())) {
      int before = matings.size();
      matings.add(Mating.of(open, near));
      if (Mating.isSound(open, near)
          && inRow(farEnd(adapter, near), to, adapters, next + 1, matings)) {
        return true;
      }
      matings.subList(before, matings.size()).clear();
    }
    return false;
  }

  /**
   * Looks for the shortest chain.
   *
   * @param from one end
   * @param to the other end
   * @param stock the adapters there are
   * @param <A> the kind of adapter
   * @return the chain, or that there is none of at most {@value #MOST_ADAPTERS} adapters
   */
  public static <A extends TwoEnded> Chain<A> between(End from, End to, List<A> stock) {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    Objects.requireNonNull(stock, "stock");
    Mating direct = Mating.of(from, to);
    if (direct.verdict().isSound()) {
      return new Chain<>(from, to, List.of(), List.of(direct));
    }
    Set<End> reached = new HashSet<>(List.of(from));
    List<Way<A>> ways = List.of(new Way<>(from, List.of(), List.of(), Double.POSITIVE_INFINITY));
    for (int pieces = 1; pieces <= MOST_ADAPTERS && !ways.isEmpty(); pieces++) {
      ways = oneMore(ways, stock, reached);
      Optional<Chain<A>> found = ways.stream()
          .filter(way -> Mating.of(way.open, to).verdict().isSound())
          .max(Comparator.comparingDouble(Way::boreMetres))
          .map(way ->
              new Chain<>(from, to, way.adapters, longer(way.matings, Mating.of(way.open, to))));
      if (found.isPresent()) {
        return found.get();
      }
    }
    return new Chain<>(from, to, List.of(), List.of(direct));
  }

  /** The widest way to every end that is reached for the first time with one adapter more. */
  private static <A extends TwoEnded> List<Way<A>> oneMore(
      List<Way<A>> ways, List<A> stock, Set<End> reached) {
    Map<End, Way<A>> next = new LinkedHashMap<>();
    for (Way<A> way : ways) {
      for (A adapter : stock) {
        step(way, adapter, adapter.one(), adapter.other(), reached, next);
        step(way, adapter, adapter.other(), adapter.one(), reached, next);
      }
    }
    reached.addAll(next.keySet());
    return List.copyOf(next.values());
  }

  private static <A extends TwoEnded> void step(
      Way<A> way, A adapter, End near, End far, Set<End> reached, Map<End, Way<A>> next) {
    Mating mating = Mating.of(way.open, near);
    if (mating.verdict().isSound() && !reached.contains(far)) {
      next.merge(
          far,
          way.through(adapter, far, mating),
          (one, other) -> other.boreMetres > one.boreMetres ? other : one);
    }
  }

  private static <T> List<T> longer(List<T> list, T last) {
    List<T> longer = new ArrayList<>(list);
    longer.add(last);
    return List.copyOf(longer);
  }

  /** {@return what the search found} */
  public ChainVerdict verdict() {
    if (!matings.get(matings.size() - 1).verdict().isSound()) {
      return ChainVerdict.NOT_JOINED;
    }
    return adapters.isEmpty() ? ChainVerdict.DIRECT : ChainVerdict.THROUGH_ADAPTERS;
  }

  /**
   * {@return the narrowest bore of the adapters, which rules the flow; empty if there are none, or if nobody told the
   * bore of one of them}
   */
  public Optional<Length> smallestBore() {
    boolean allTold =
        adapters.stream().allMatch(adapter -> adapter.smallestBore().isPresent());
    return allTold
        ? adapters.stream()
            .map(adapter -> adapter.smallestBore().orElseThrow())
            .min(Comparator.naturalOrder())
        : Optional.empty();
  }

  private static String named(TwoEnded adapter, String before, LengthUnit unit, String after) {
    return adapter
        .smallestBore()
        .map(bore -> adapter.name() + before + bore.format(unit) + after)
        .orElse(adapter.name());
  }

  /**
   * {@return in which order to put it together, by what each joint turns; empty where nothing joins the ends}
   */
  public Optional<String> assembly() {
    if (verdict() == ChainVerdict.NOT_JOINED) {
      return Optional.empty();
    }
    return Optional.of(matings.stream()
        .filter(
            mating -> mating.turning().filter(turned -> turned == Turning.PART).isEmpty())
        .findFirst()
        .map(last -> adapters.isEmpty()
            ? "Both parts may stand still: "
                + last.turning().map(Turning::label).orElse("nothing is turned") + "."
            : "Close the joint of " + last.one().label() + " and "
                + last.other().label() + " last: "
                + last.turning().map(Turning::label).orElse("nothing is turned") + ".")
        .orElse(
            adapters.isEmpty()
                ? "One of the two parts must be free to turn; where both stand still, put a swivel or union between."
                : "Begin at the part that stands still and screw one piece on another; the last joint turns the other part."
                    + " Where both stand still, put a swivel or union between."));
  }

  /** {@return a warning from the second adapter on; those of the single joints are with {@link #matings()}} */
  public List<Caution> cautions() {
    return adapters.size() > 1 ? List.of(STACKED) : List.of();
  }

  /** {@return the answer in words, such as "3/8 NPT female to G 1/4 male: through nipple (bore 9 mm)"} */
  public String inWords() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return the answer in words
   */
  public String inWords(UnitSystem units) {
    String ends = from.label() + " to " + to.label() + ": ";
    return switch (verdict()) {
      case DIRECT -> ends + "they go straight together";
      case NOT_JOINED ->
        ends + "no chain of up to " + MOST_ADAPTERS + " of these adapters joins them. "
            + matings.get(0).reason(units);
      case THROUGH_ADAPTERS ->
        ends
            + adapters.stream()
                .map(adapter -> named(adapter, " (bore ", units.smallLengthUnit(), ")"))
                .collect(Collectors.joining(", then ", "through ", ""));
    };
  }

  /**
   * Tells every joint of the chain, why it holds, and the narrowest bore.
   *
   * @param units the units to show numbers in
   */
  @Override
  public Working working(UnitSystem units) {
    LengthUnit unit = units.smallLengthUnit();
    Working.Builder out = Working.titled(from.label() + " to " + to.label(), units);
    for (int i = 0; i < matings.size(); i++) {
      Mating mating = matings.get(i);
      out.note(mating.one().label() + " and " + mating.other().label() + ": " + mating.reason(units)
          + " [" + mating.source() + "]");
      if (i < adapters.size()) {
        out.note(named(adapters.get(i), ", narrowest bore ", unit, ""));
      }
    }
    return out.answer(
            switch (verdict()) {
              case DIRECT -> "They go straight together.";
              case NOT_JOINED -> "Nothing joins them.";
              case THROUGH_ADAPTERS ->
                smallestBore()
                    .map(bore -> "Narrowest bore on the way: " + bore.format(unit))
                    .orElse("The adapters named join them; their bores are not known.");
            })
        .build();
  }
}
