package org.airfit.select;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.joint.End;
import org.airfit.measure.Instrument;
import org.airfit.plug.ReferenceSet;

/**
 * A price list to be checked, as it was printed: unlike a {@link Catalogue} it may hold an article twice.
 *
 * @param articles the parts, in the order of the list
 * @param profiles the profiles that its couplings have
 * @param caliper with what plugs are measured at the counter
 * @param risk the chance of taking one profile for another that is accepted [-], in (0, 0.5)
 * @param soldTogether the ids of parts that are sold as one set
 * @param usualEnds how outlets, tools and other parts end that the list need not hold; {@link #USUAL_ENDS} where
 *     nobody told
 */
public record PriceList(
    List<ListedPart> articles,
    ReferenceSet profiles,
    Instrument caliper,
    double risk,
    List<Set<String>> soldTogether,
    List<End> usualEnds) {

  /** So many articles are looked at. */
  public static final int MOST_ARTICLES = 100_000;

  /** The chance of taking one profile for another that is accepted where nobody told [-]: our own choice. */
  public static final double USUAL_RISK = 0.01;

  /**
   * Pipe threads of outlets and tools, 1/4 to 1: common practice, no source, and our own choice of sizes.
   */
  public static final List<End> USUAL_ENDS = Stream.of("1/4", "3/8", "1/2", "3/4", "1")
      .flatMap(size -> Stream.of(
          size + " NPT male",
          size + " NPT female",
          "R " + size + " male",
          "Rp " + size + " female",
          "G " + size + " male",
          "G " + size + " female"))
      .map(End::parse)
      .toList();

  /**
   * Checks the components, and copies the lists.
   *
   * @param articles the parts, in the order of the list
   * @param profiles the profiles that its couplings have
   * @param caliper with what plugs are measured at the counter
   * @param risk the chance of taking one profile for another that is accepted [-], in (0, 0.5)
   * @param soldTogether the ids of parts that are sold as one set, at least two in each
   * @param usualEnds how outlets, tools and other parts end that the list need not hold
   * @throws IllegalArgumentException if there are more than 100,000 articles, if a coupling has a profile that {@code
   *     profiles} lacks, if {@code risk} is out of range, or if a set holds fewer than two parts or one that the list
   *     lacks
   */
  public PriceList {
    articles = List.copyOf(Objects.requireNonNull(articles, "articles"));
    Objects.requireNonNull(profiles, "profiles");
    Objects.requireNonNull(caliper, "caliper");
    soldTogether = Objects.requireNonNull(soldTogether, "soldTogether").stream()
        .map(set -> (Set<String>) new LinkedHashSet<>(set))
        .map(Collections::unmodifiableSet)
        .toList();
    usualEnds = List.copyOf(Objects.requireNonNull(usualEnds, "usualEnds"));
    if (articles.size() > MOST_ARTICLES) {
      throw new IllegalArgumentException("articles of a price list must be at most " + MOST_ARTICLES
          + ", were " + articles.size() + "; check it in pieces");
    }
    if (!(risk > 0.0 && risk < 0.5)) {
      throw new IllegalArgumentException(
          "risk of taking one profile for another must be in (0, 0.5), was " + risk);
    }
    Set<String> ids = new LinkedHashSet<>();
    for (ListedPart article : articles) {
      ids.add(article.id());
      requireKnown(article.part(), profiles);
    }
    for (Set<String> set : soldTogether) {
      if (set.size() < 2) {
        throw new IllegalArgumentException(
            "parts that are sold together must be at least two, were " + set);
      }
      for (String id : set) {
        if (!ids.contains(id)) {
          throw new IllegalArgumentException(
              "parts that are sold together must be of the list, was \"" + id + "\"");
        }
      }
    }
  }

  private static void requireKnown(Part part, ReferenceSet profiles) {
    for (String profile : profilesOf(part)) {
      if (profiles.profile(profile).isEmpty()) {
        throw new IllegalArgumentException("profile of part " + part.id()
            + " must be one of the reference set " + profiles.name() + ", was \"" + profile + "\"");
      }
    }
  }

  /**
   * Obtains a list of which nothing more is told: the caliper reads 0.01 mm, the risk is 0.01, nothing is told to be
   * sold together, and the ends are the usual ones.
   *
   * @param articles the parts, in the order of the list
   * @param profiles the profiles that its couplings have
   * @return the list
   * @throws IllegalArgumentException if there are more than 100,000 articles, or a coupling has a profile that {@code
   *     profiles} lacks
   */
  public static PriceList of(List<ListedPart> articles, ReferenceSet profiles) {
    return new PriceList(
        articles, profiles, Instrument.DIGITAL_CALIPER, USUAL_RISK, List.of(), USUAL_ENDS);
  }

  /** The profiles that a half of a coupling has or takes; none of another part. */
  static Set<String> profilesOf(Part part) {
    if (part instanceof Part.Socket socket) {
      return socket.profiles();
    }
    return part instanceof Part.Plug plug ? Set.of(plug.profile()) : Set.of();
  }

  /** {@return how many articles it holds} */
  @Override
  public String toString() {
    return "Price list of " + articles.size() + " articles";
  }
}
