package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.plug.PairOutcome;
import org.airfit.plug.ToldPair;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Medium;
import org.airfit.source.Source;

/** The search against trying everything, written anew and with nothing of the search in it. */
class ChangeOverProperties {

  /** With C of 2.2 it is met from 7 bar(g) and not from 6.5; with 9 from both. */
  private static final Bay.Need NEED = new Bay.Need(
      Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(8.0)),
      GaugePressure.ofBar(6.0),
      Optional.empty());

  private static final String[] LINES = {"3/8 NPT", "1/2 NPT"};

  private static final String[] NAMES = {"finch", "wren", "robin"};

  /** What a case is made of, as plain numbers: the try of everything knows nothing else. */
  private static final class Case {
    private final int[][] socketsOf; // bay, profile: how many
    private final int[][] plugsOf;
    private final int[][] socketPrices; // profile, part
    private final int[] lineOf; // bay: which thread its line has
    private final int[][] socketFits; // profile, part: onto which thread
    private final int[][] plugPrices;
    private final int[][] socketShelf;
    private final int[][] plugShelf;
    private final int socketWork;
    private final int plugWork;
    private final PairOutcome[][] told;
    private final boolean[] isNarrow; // profile: it depends whether a tool gets its air through it
    private final boolean[] hasNeed; // bay: its tools tell what they need

    Case(SplittableRandom random) {
      int bays = 1 + random.nextInt(3);
      socketsOf = new int[bays][NAMES.length];
      plugsOf = new int[bays][NAMES.length];
      for (int bay = 0; bay < bays; bay++) {
        socketsOf[bay][random.nextInt(NAMES.length)] = 1 + random.nextInt(3);
        plugsOf[bay][random.nextInt(NAMES.length)] = 1 + random.nextInt(3);
        plugsOf[bay][random.nextInt(NAMES.length)] += random.nextInt(3);
      }
      lineOf = random.ints(bays, 0, LINES.length).toArray();
      socketFits = new int[NAMES.length][];
      socketPrices = new int[NAMES.length][];
      plugPrices = new int[NAMES.length][];
      socketShelf = new int[NAMES.length][];
      plugShelf = new int[NAMES.length][];
      for (int profile = 0; profile < NAMES.length; profile++) {
        int parts = random.nextInt(3); // none: the profile cannot be had
        socketFits[profile] = random.ints(parts, 0, LINES.length).toArray();
        socketPrices[profile] = random.ints(parts, 1, 20).toArray();
        plugPrices[profile] = random.ints(parts, 1, 20).toArray();
        socketShelf[profile] = random.ints(parts, 0, 4).toArray();
        plugShelf[profile] = random.ints(parts, 0, 4).toArray();
      }
      isNarrow = new boolean[NAMES.length];
      for (int profile = 0; profile < NAMES.length; profile++) {
        isNarrow[profile] = random.nextInt(3) == 0;
      }
      hasNeed = new boolean[bays];
      for (int bay = 0; bay < bays; bay++) {
        hasNeed[bay] = random.nextBoolean();
      }
      socketWork = random.nextInt(5);
      plugWork = random.nextInt(5);
      told = new PairOutcome[NAMES.length][NAMES.length];
      PairOutcome[] all = PairOutcome.values();
      for (int one = 0; one < NAMES.length; one++) {
        for (int other = 0; other < NAMES.length; other++) {
          told[one][other] = one == other
              ? PairOutcome.FITS
              : random.nextInt(3) > 0
                  ? PairOutcome.DOES_NOT_GO_IN
                  : all[random.nextInt(all.length)];
        }
      }
    }

    private static Money usd(int whole) {
      return new Money(BigDecimal.valueOf(whole), "USD");
    }

    CouplingInventory inventory() {
      List<Bay> bays = new ArrayList<>();
      for (int bay = 0; bay < socketsOf.length; bay++) {
        List<Bay.Sockets> sockets = new ArrayList<>();
        List<Bay.Plugs> plugs = new ArrayList<>();
        for (int profile = 0; profile < NAMES.length; profile++) {
          if (socketsOf[bay][profile] > 0) {
            sockets.add(new Bay.Sockets(
                "drops",
                Set.of(NAMES[profile]),
                Optional.of(End.parse(LINES[lineOf[bay]] + " male")),
                socketsOf[bay][profile]));
          }
          if (plugsOf[bay][profile] > 0) {
            plugs.add(new Bay.Plugs(
                "tools " + profile,
                NAMES[profile],
                Optional.of(End.parse("1/4 NPT female")),
                plugsOf[bay][profile],
                hasNeed[bay] ? Optional.of(NEED) : Optional.empty()));
          }
        }
        bays.add(new Bay(
            "bay " + bay,
            Medium.COMPRESSED_AIR,
            Optional.of(new Range<>(GaugePressure.ofBar(6.5), GaugePressure.ofBar(7.0))),
            sockets,
            plugs));
      }
      List<Part> parts = new ArrayList<>();
      List<CouplingInventory.OnShelf> shelf = new ArrayList<>();
      List<ToldPair> pairs = new ArrayList<>();
      for (int profile = 0; profile < NAMES.length; profile++) {
        for (int part = 0; part < socketPrices[profile].length; part++) {
          String id = profile + "-" + part;
          parts.add(new Part.Socket(
              Shelf.steel("S" + id).withPrice(usd(socketPrices[profile][part])),
              Set.of(NAMES[profile]),
              End.parse(LINES[socketFits[profile][part]] + " female"),
              FlowCapacity.of(
                  SonicConductance.ofCubicDecimetresPerSecondBar(isNarrow[profile] ? 2.2 : 9.0),
                  0.3)));
          parts.add(new Part.Plug(
              Shelf.steel("P" + id).withPrice(usd(plugPrices[profile][part])),
              NAMES[profile],
              End.parse("1/4 NPT male")));
          if (socketShelf[profile][part] > 0) {
            shelf.add(new CouplingInventory.OnShelf("S" + id, socketShelf[profile][part]));
          }
          if (plugShelf[profile][part] > 0) {
            shelf.add(new CouplingInventory.OnShelf("P" + id, plugShelf[profile][part]));
          }
        }
        for (int other = 0; other < NAMES.length; other++) {
          if (told[profile][other] != PairOutcome.NOT_TOLD && profile != other) {
            pairs.add(new ToldPair(
                NAMES[profile], NAMES[other], told[profile][other], Source.demo("drawn by lot")));
          }
        }
      }
      return new CouplingInventory(
          bays,
          Catalogue.of(parts),
          shelf,
          Optional.of(new CouplingInventory.Labour(usd(socketWork), usd(plugWork))),
          pairs,
          AirState.of(AbsolutePressure.ofBar(1.0), Temperature.ofCelsius(20.0)),
          Optional.empty());
    }

    /** The cost of an assignment, piece by piece: each from the shelf or bought; negative where it cannot be had. */
    int cost(int[] profileOf) {
      int cost = 0;
      for (int profile = 0; profile < NAMES.length; profile++) {
        int[] sockets = new int[LINES.length];
        int plugs = 0;
        for (int bay = 0; bay < profileOf.length; bay++) {
          if (profileOf[bay] == profile) {
            for (int old = 0; old < NAMES.length; old++) {
              sockets[lineOf[bay]] += old == profile ? 0 : socketsOf[bay][old];
              plugs += old == profile ? 0 : plugsOf[bay][old];
            }
          }
        }
        for (int line = 0; line < LINES.length; line++) {
          int[] prices = fitting(line, socketFits[profile], socketPrices[profile]);
          int[] shelf = fitting(line, socketFits[profile], socketShelf[profile]);
          if (sockets[line] > 0 && prices.length == 0) {
            return -1;
          }
          cost += sockets[line] * socketWork;
          cost += sockets[line] == 0 ? 0 : pieces(sockets[line], prices, shelf);
        }
        if (plugs > 0 && plugPrices[profile].length == 0) {
          return -1;
        }
        cost += plugs * plugWork;
        cost += plugs == 0 ? 0 : pieces(plugs, plugPrices[profile], plugShelf[profile].clone());
      }
      return cost;
    }

    /** In how many bays it depends: through a narrow coupling, or one of which nothing is on offer. */
    int open(int[] profileOf) {
      int open = 0;
      for (int bay = 0; bay < profileOf.length; bay++) {
        int profile = profileOf[bay];
        open += hasNeed[bay] && (isNarrow[profile] || socketPrices[profile].length == 0) ? 1 : 0;
      }
      return open;
    }

    private static int[] fitting(int line, int[] fits, int[] values) {
      return IntStream.range(0, fits.length)
          .filter(part -> fits[part] == line)
          .map(part -> values[part])
          .toArray();
    }

    /** All ways to get so many pieces, one after the other. */
    private static int pieces(int left, int[] prices, int[] shelf) {
      if (left == 0) {
        return 0;
      }
      int best = Integer.MAX_VALUE;
      for (int part = 0; part < prices.length; part++) {
        if (shelf[part] > 0) {
          shelf[part]--;
          best = Math.min(best, pieces(left - 1, prices, shelf));
          shelf[part]++;
        } else {
          best = Math.min(best, prices[part] + pieces(left - 1, prices, shelf));
        }
      }
      return best;
    }

    boolean isSafe(Set<Integer> kept) {
      for (int one : kept) {
        for (int other : kept) {
          if (told[one][other] != PairOutcome.FITS
              && told[one][other] != PairOutcome.DOES_NOT_GO_IN) {
            return false;
          }
        }
      }
      return true;
    }

    /** In how many ways plugs meet sockets that let go or are not told, and in how many they leak. */
    int[] ways(int[] profileOf, Set<Integer> changed, Set<String> kinds) {
      int[] ways = new int[2];
      for (int from = 0; from < profileOf.length; from++) {
        for (int to = 0; to < profileOf.length; to++) {
          int[] plugs = now(plugsOf[from], changed.contains(from) ? profileOf[from] : -1);
          int[] sockets = now(socketsOf[to], changed.contains(to) ? profileOf[to] : -1);
          for (int plug = 0; plug < NAMES.length; plug++) {
            for (int socket = 0; socket < NAMES.length; socket++) {
              int count = plugs[plug] * sockets[socket];
              PairOutcome outcome = told[plug][socket];
              if (outcome == PairOutcome.LEAKS) {
                ways[1] += count;
              } else if (outcome == PairOutcome.LETS_GO || outcome == PairOutcome.NOT_TOLD) {
                ways[0] += count;
                if (count > 0) {
                  kinds.add(plug + " " + socket);
                }
              }
            }
          }
        }
      }
      return ways;
    }

    private static int[] now(int[] pieces, int profile) {
      int[] after = pieces.clone();
      if (profile >= 0) {
        Arrays.fill(after, 0);
        after[profile] = Arrays.stream(pieces).sum();
      }
      return after;
    }
  }

  /** How good a plan is: what depends, then how many profiles, then the money. */
  private record Good(int open, int profiles, int cost) {}

  private static final Comparator<Good> BEST_FIRST = Comparator.comparingInt(Good::open)
      .thenComparingInt(Good::profiles)
      .thenComparingInt(Good::cost);

  @Property(tries = 300)
  void the_plan_is_the_best_of_all(@ForAll long seed) {
    Case drawn = new Case(new SplittableRandom(seed));
    ChangeOver found = ChangeOver.of(drawn.inventory());
    int bays = drawn.socketsOf.length;
    Map<Set<Integer>, Good> bySet = new HashMap<>();
    for (int code = 0; code < Math.pow(NAMES.length, bays); code++) {
      int[] profileOf = new int[bays];
      Set<Integer> kept = new HashSet<>();
      for (int bay = 0, rest = code; bay < bays; bay++, rest /= NAMES.length) {
        profileOf[bay] = rest % NAMES.length;
        kept.add(profileOf[bay]);
      }
      int cost = drawn.cost(profileOf);
      if (cost >= 0 && drawn.isSafe(kept)) {
        bySet.merge(
            kept,
            new Good(drawn.open(profileOf), kept.size(), cost),
            (one, other) -> BEST_FIRST.compare(one, other) <= 0 ? one : other);
      }
    }
    Map<Set<Integer>, Good> told = new HashMap<>();
    List<String> names = List.of(NAMES);
    for (CouplingPlan plan : found.plans()) {
      Set<Integer> kept = new HashSet<>();
      plan.profiles().forEach(profile -> kept.add(names.indexOf(profile)));
      int total = plan.total().amount().intValueExact();
      told.put(kept, new Good(plan.openBays(), kept.size(), total));
      int pieces = plan.labour().orElseThrow().amount().intValueExact();
      for (CouplingPlan.Purchase each : plan.purchases()) {
        pieces += each.total().amount().intValueExact();
      }
      assertThat(pieces).as("its parts and its work").isEqualTo(total);
    }
    // a profile that is neither in use nor on offer is not weighed; it cannot be had either
    assertThat(told).isEqualTo(bySet);
    if (!bySet.isEmpty()) {
      CouplingPlan best = found.best().orElseThrow();
      assertThat(new Good(
              best.openBays(), best.profiles().size(), best.total().amount().intValueExact()))
          .isEqualTo(bySet.values().stream().min(BEST_FIRST).orElseThrow());
      assertThat(found.cheaperButOpen())
          .allMatch(plan -> plan.total().compareTo(best.total()) < 0)
          .allMatch(plan -> plan.openBays() > best.openBays());
      boolean isCheaperOpen = bySet.values().stream()
          .anyMatch(each ->
              each.cost < best.total().amount().intValueExact() && each.open > best.openBays());
      assertThat(found.cheaperButOpen().isEmpty()).isNotEqualTo(isCheaperOpen);
    }
  }

  /** How bad an order is: bays in the largest stop, bays merged, and the ways of the states between. */
  private static final class Order {
    private final Case drawn;
    private final int[] profileOf;
    private final Set<String> kindsToday = new HashSet<>();
    private int[] best = {Integer.MAX_VALUE};

    Order(Case drawn, int[] profileOf) {
      this.drawn = drawn;
      this.profileOf = profileOf;
      drawn.ways(profileOf, Set.of(), kindsToday);
    }

    void go(Set<Integer> changed, List<Integer> left, int[] sofar) {
      if (left.isEmpty()) {
        best = Arrays.compare(sofar, best) < 0 ? sofar : best;
        return;
      }
      for (int block = 1; block < 1 << left.size(); block++) {
        Set<Integer> after = new LinkedHashSet<>(changed);
        List<Integer> rest = new ArrayList<>();
        for (int i = 0; i < left.size(); i++) {
          if ((block >> i & 1) == 1) {
            after.add(left.get(i));
          } else {
            rest.add(left.get(i));
          }
        }
        Set<String> kinds = new HashSet<>();
        int[] ways = drawn.ways(profileOf, after, kinds);
        if (!rest.isEmpty() && !kindsToday.containsAll(kinds)) {
          continue;
        }
        int size = Integer.bitCount(block);
        boolean isBetween = !rest.isEmpty();
        go(after, rest, new int[] {
          Math.max(sofar[0], size),
          sofar[1] + size - 1,
          sofar[2] + (isBetween ? ways[0] : 0),
          sofar[3] + (isBetween ? ways[1] : 0)
        });
      }
    }
  }

  @Property(tries = 300)
  void the_order_is_the_best_of_all(@ForAll long seed) {
    Case drawn = new Case(new SplittableRandom(seed));
    ChangeOver found = ChangeOver.of(drawn.inventory());
    if (found.best().isEmpty()) {
      return;
    }
    CouplingPlan plan = found.best().get();
    int[] profileOf = plan.kept().stream()
        .mapToInt(each -> List.of(NAMES).indexOf(each.profile()))
        .toArray();
    List<Integer> changing = new ArrayList<>();
    for (int bay = 0; bay < profileOf.length; bay++) {
      int old = Arrays.stream(drawn.socketsOf[bay]).sum()
          + Arrays.stream(drawn.plugsOf[bay]).sum();
      int same = drawn.socketsOf[bay][profileOf[bay]] + drawn.plugsOf[bay][profileOf[bay]];
      if (old > same) {
        changing.add(bay);
      }
    }
    Order order = new Order(drawn, profileOf);
    order.go(Set.of(), changing, new int[4]);
    int[] told = new int[4];
    Set<Integer> changed = new LinkedHashSet<>();
    for (ChangeStep step : found.steps()) {
      step.bays().forEach(bay -> changed.add(Integer.parseInt(bay.substring(4))));
      Set<String> kinds = new HashSet<>();
      int[] ways = drawn.ways(profileOf, changed, kinds);
      boolean isBetween = changed.size() < changing.size();
      told = new int[] {
        Math.max(told[0], step.bays().size()),
        told[1] + step.bays().size() - 1,
        told[2] + (isBetween ? ways[0] : 0),
        told[3] + (isBetween ? ways[1] : 0)
      };
      assertThat(step.dangerousWays()).isEqualTo(ways[0]);
      assertThat(!isBetween || order.kindsToday.containsAll(kinds))
          .as("no pair between that may let go and could not be made before")
          .isTrue();
    }
    assertThat(changed).containsExactlyInAnyOrderElementsOf(changing);
    assertThat(told).isEqualTo(order.best);
  }
}
