package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.internal.Digits;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Separation;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.LengthUnit;

/** Looks at what goes together in a price list: ratings of what is sold together, halves, and profiles. */
final class HalfFaults {

  /** No more pairs of profiles are told; the hardest to tell apart come first. */
  static final int MOST_PAIRS = 200;

  /** Parts for shop air are rated for less: common practice, no source, and our own choice of the number. */
  static final GaugePressure BEYOND_USE = GaugePressure.ofBar(100.0);

  /** The highest rating first; of those that have it, by id. */
  private static final Comparator<Part> HIGHEST_FIRST = Comparator.comparing(
          (Part part) -> part.facts().rating().orElseThrow())
      .reversed()
      .thenComparing(Part::id);

  private final PriceList list;
  private final List<ListFault> found;
  private final List<Part> parts;
  private final Map<String, List<Part>> sockets = new LinkedHashMap<>();
  private final Map<String, List<Part>> plugs = new LinkedHashMap<>();
  private final Set<String> below = new HashSet<>();
  private int rated;

  /** Takes each article once, the first of each id. */
  HalfFaults(PriceList list, List<ListFault> found) {
    this.list = list;
    this.found = found;
    Map<String, Part> once = new LinkedHashMap<>();
    list.articles().forEach(article -> once.putIfAbsent(article.id(), article.part()));
    this.parts = List.copyOf(once.values());
    for (Part part : parts) {
      Map<String, List<Part>> side = part instanceof Part.Socket ? sockets : plugs;
      for (String profile : PriceList.profilesOf(part)) {
        side.computeIfAbsent(profile, any -> new ArrayList<>()).add(part);
      }
    }
  }

  /** {@return how many parts have a rating} */
  int rated() {
    return rated;
  }

  /** {@return how many parts are halves of couplings} */
  int halves() {
    return (int)
        parts.stream().filter(part -> !PriceList.profilesOf(part).isEmpty()).count();
  }

  /** {@return how many profiles the couplings of the list have} */
  int profiles() {
    return used().size();
  }

  private Set<String> used() {
    Set<String> used = new LinkedHashSet<>(sockets.keySet());
    used.addAll(plugs.keySet());
    return used;
  }

  void check() {
    for (Part part : parts) {
      if (part.facts().rating().isPresent()) {
        rated++;
        beyondUse(part, part.facts().rating().get());
      } else {
        found.add(ListFault.of(
            FaultKind.RATING_NOT_TOLD,
            List.of(part.id()),
            units -> part.name()
                + " has no rating: nobody knows whether it may be put under pressure, and it is"
                + " proposed for no job.",
            "Ask the maker for the highest pressure, and do not sell it for a pressure before."));
      }
      half(part);
    }
    list.soldTogether().forEach(this::soldTogether);
    alike();
  }

  private void beyondUse(Part part, GaugePressure rating) {
    if (rating.compareTo(BEYOND_USE) > 0) {
      found.add(ListFault.of(
          FaultKind.RATING_BEYOND_USE,
          List.of(part.id()),
          units -> part.name() + " is rated for " + units.say(rating, BEYOND_USE)
              + "; parts for shop air are rated for no more than "
              + units.say(BEYOND_USE, rating) + ", by our choice.",
          "Look for a slip of the decimal point or of the unit, and hold it against the"
              + " maker's sheet."));
    }
  }

  private void half(Part part) {
    Set<String> profiles = PriceList.profilesOf(part);
    if (profiles.isEmpty()) {
      return;
    }
    boolean isSocket = part instanceof Part.Socket;
    String other = isSocket ? "plug" : "socket";
    Set<Part> mates = new LinkedHashSet<>();
    for (String profile : profiles) {
      mates.addAll((isSocket ? plugs : sockets).getOrDefault(profile, List.of()));
    }
    if (mates.isEmpty()) {
      found.add(ListFault.of(
          FaultKind.NO_OTHER_HALF,
          List.of(part.id()),
          units -> part.name() + ": the list has no " + other + " of profile "
              + String.join(" or ", profiles) + ".",
          "Add a " + other + " of that profile, or look whether the profile is a slip."));
      return;
    }
    below(
        part,
        mates.stream().filter(mate -> mate.facts().rating().isPresent()).toList(),
        "goes with it");
  }

  private void soldTogether(Set<String> ids) {
    List<Part> rated = parts.stream()
        .filter(part -> ids.contains(part.id()) && part.facts().rating().isPresent())
        .toList();
    rated.forEach(part -> below(part, rated, "is sold with it"));
  }

  /** Tells a part, once, that is rated below the highest of others: each of them is put under too much by that one. */
  private void below(Part part, List<Part> others, String how) {
    Optional<Part> highest = others.stream().min(HIGHEST_FIRST);
    if (part.facts().rating().isEmpty() || highest.isEmpty()) {
      return;
    }
    GaugePressure own = part.facts().rating().get();
    GaugePressure most = highest.get().facts().rating().orElseThrow();
    if (own.compareTo(most) < 0 && below.add(part.id())) {
      found.add(ListFault.of(
          FaultKind.RATING_BELOW,
          List.of(part.id(), highest.get().id()),
          units -> part.name() + " is rated for " + units.say(own, most) + ". "
              + highest.get().name() + ", which " + how + ", is rated for " + units.say(most, own)
              + ": whoever goes by that puts the first under too much.",
          "Look whether the rating is a slip; if not, sell the two for the lower pressure only."));
    }
  }

  private void alike() {
    Set<String> ids = used();
    List<PlugProfile> used = list.profiles().profiles().stream()
        .filter(profile -> ids.contains(profile.id()))
        .toList();
    if (used.size() < 2) {
      return;
    }
    ReferenceSet set = ReferenceSet.of(list.profiles().name(), used);
    for (Separation pair : Separation.hardest(set, list.caliper(), MOST_PAIRS)) {
      if (pair.risk() <= list.risk()) {
        break;
      }
      add(pair);
    }
  }

  private void add(Separation pair) {
    String names = pair.one().displayName() + " and " + pair.other().displayName();
    List<String> ids = List.of(pair.one().id(), pair.other().id());
    if (pair.dimensions().isEmpty()) {
      found.add(ListFault.of(
          FaultKind.PROFILES_TOO_ALIKE,
          ids,
          units ->
              names + " have no dimension in common that is known, so no reading tells them apart.",
          "Measure known plugs of both in the same dimensions."));
      return;
    }
    Separation.ByDimension best = pair.dimensions().get(0);
    List<String> others =
        pair.instruments(list.risk()).stream().map(each -> each.label()).toList();
    found.add(ListFault.of(
        FaultKind.PROFILES_TOO_ALIKE,
        ids,
        units -> names + ": with a " + list.caliper().label()
            + " and every dimension read, one is taken for the other with the chance "
            + Digits.percent(pair.risk()) + ", and " + Digits.percent(list.risk())
            + " is accepted. The " + best.dimension() + " differs most, by "
            + best.difference()
                .format(units.either(LengthUnit.MILLIMETRE, LengthUnit.INCH), units.either(2, 4))
            + " or "
            + Digits.fixed(best.difference().millimetres() / best.scatter().millimetres(), 1)
            + " times the scatter.",
        others.isEmpty()
            ? "Tell them apart by a gauge or the mating half, and keep them in separate bins."
            : "A " + others.get(0) + " would do; or use a gauge or the mating half."));
  }
}
