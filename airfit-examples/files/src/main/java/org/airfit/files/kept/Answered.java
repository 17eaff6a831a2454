package org.airfit.files.kept;

import java.util.List;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;

/**
 * What was answered, as far as it decides: what is kept of an answer.
 *
 * @param kind what became of the job
 * @param units the units of the sentences
 * @param headline the answer in a sentence or two
 * @param plug what the plug at hand is; empty where none is
 * @param before what arrives at the tool without new parts; empty where that was not told
 * @param proposals the parts, best first; of nothing fits the nearest
 * @param rules what every rule says of the first of them
 * @param toGive what would have to give where nothing fits
 * @param cautions what must be shown with it, with the first of the proposals where there are some
 */
record Answered(
    Kind kind,
    UnitSystem units,
    String headline,
    Optional<PlugTold> plug,
    Optional<AirTold> before,
    List<PartsTold> proposals,
    List<RuleTold> rules,
    List<String> toGive,
    List<CautionTold> cautions) {

  Answered {
    proposals = List.copyOf(proposals);
    rules = List.copyOf(rules);
    toGive = List.copyOf(toGive);
    cautions = List.copyOf(cautions);
  }

  /** The same as far as an answer holds it that was kept by an earlier form: what that lacks is left out. */
  Answered asFarAs(Answered earlier) {
    boolean needs = earlier.before.filter(air -> air.needs().isEmpty()).isEmpty();
    boolean cautions =
        earlier.proposals.stream().noneMatch(each -> each.cautions().isEmpty());
    boolean bills = earlier.proposals.stream().noneMatch(each -> each.bill().isEmpty());
    return new Answered(
        kind,
        units,
        headline,
        plug,
        needs ? before : before.map(AirTold::withoutNeed),
        proposals.stream()
            .map(each -> cautions ? each : each.withoutCautions())
            .map(each -> bills ? each : each.withoutBill())
            .toList(),
        rules,
        toGive,
        this.cautions);
  }

  /** What became of a job. */
  enum Kind {
    FITS("fits", "parts of the catalogue fit"),
    NOTHING_FITS("nothingFits", "nothing in the catalogue fits"),
    PROFILE_NOT_KNOWN("profileNotKnown", "no parts are chosen, for the profile is not known"),
    REFUSED("refused", "airfit does not advise on it");

    private final String word;
    private final String inWords;

    Kind(String word, String inWords) {
      this.word = word;
      this.inWords = inWords;
    }

    /** What files say. */
    String word() {
      return word;
    }

    String inWords() {
      return inWords;
    }
  }

  /**
   * What a plug, or a socket alone, is.
   *
   * @param verdict the verdict in words
   * @param profile the id of its profile; empty where none can be told
   * @param sentence the same in a sentence
   */
  record PlugTold(String verdict, Optional<String> profile, String sentence) {}

  /**
   * What arrives at a tool.
   *
   * @param tool the tool
   * @param arrives the pressure there; empty where the flow does not pass
   * @param restriction the biggest restriction, or what stops the flow; blank where nothing stands in the line
   * @param losses what each element loses
   * @param needs what the tool needs; empty in answers that were kept before this was, and of proposals, whose rules
   *     tell it
   */
  record AirTold(
      String tool,
      Optional<GaugePressure> arrives,
      String restriction,
      List<LossTold> losses,
      Optional<GaugePressure> needs) {

    AirTold {
      losses = List.copyOf(losses);
    }

    /** Whether as much arrives as is needed; empty where what is needed was not kept. */
    Optional<Boolean> isEnough() {
      return needs.map(least -> Difference.EnoughTurned.isEnough(arrives, least));
    }

    /** The same without what is needed. */
    AirTold withoutNeed() {
      return new AirTold(tool, arrives, restriction, losses, Optional.empty());
    }
  }

  /**
   * What an element loses.
   *
   * @param name the element
   * @param lost what it loses
   */
  record LossTold(String name, PressureDrop lost) {}

  /**
   * A proposal.
   *
   * @param parts its parts in the order of the air
   * @param price what they cost, as far as prices are known
   * @param air what arrives at each tool
   * @param cautions what must be shown with it and not with the first; empty where it was kept before this was
   * @param bill what it takes beside its parts; empty where it was kept before this was
   */
  record PartsTold(
      List<PartTold> parts,
      Optional<Money> price,
      List<AirTold> air,
      Optional<List<CautionTold>> cautions,
      Optional<List<LineTold>> bill) {

    PartsTold {
      parts = List.copyOf(parts);
      air = List.copyOf(air);
      cautions = cautions.map(List::copyOf);
      bill = bill.map(List::copyOf);
    }

    /** The same without cautions of its own. */
    PartsTold withoutCautions() {
      return new PartsTold(parts, price, air, Optional.empty(), bill);
    }

    /** The same without what it takes beside its parts. */
    PartsTold withoutBill() {
      return new PartsTold(parts, price, air, cautions, Optional.empty());
    }

    /** The numbers of its parts. */
    List<String> ids() {
      return parts.stream().map(PartTold::id).toList();
    }
  }

  /**
   * A part of a proposal.
   *
   * @param id its number
   * @param name what it is called
   * @param price its price
   * @param rated the highest pressure it may have
   */
  record PartTold(String id, String name, Optional<Money> price, Optional<GaugePressure> rated) {

    /** Name and number. */
    String inWords() {
      return name + " (" + id + ")";
    }
  }

  /**
   * What a proposal takes beside its parts, such as clamps.
   *
   * @param kind the kind of the line
   * @param name what it is called
   * @param id its number; empty where the catalogue has none
   * @param quantity how many pieces
   * @param price what they cost together; empty where it is not known, or the customer has them
   */
  record LineTold(
      String kind, String name, Optional<String> id, int quantity, Optional<Money> price) {

    /** By what it is the same line at another time. */
    List<String> key() {
      return List.of(kind, id.orElse(name));
    }

    /** Pieces, name, number and price. */
    String inWords() {
      return quantity + " x " + name + id.map(number -> " (" + number + ")").orElse("")
          + price.map(all -> ", " + all.shown()).orElse("");
    }
  }

  /**
   * What a rule says.
   *
   * @param rule its title
   * @param outcome met, open or not met, in words
   * @param reason why
   */
  record RuleTold(String rule, String outcome, String reason) {}

  /**
   * A caution.
   *
   * @param title what it is about
   * @param text what to do
   * @param source what it rests on
   */
  record CautionTold(String title, String text, String source) {

    /** Title and text. */
    String inWords() {
      return title + ": " + text;
    }
  }
}
