package org.airfit.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.flow.CapacityRange;
import org.airfit.joint.End;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorRange;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.NearWord;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.select.DeviceKind;
import org.airfit.select.ListedPart;
import org.airfit.select.Lubrication;
import org.airfit.select.Material;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.select.RegulatorKind;

/** The fields of a part, alike in a catalogue and in a job that tells of a part that is there. */
final class PartFields {

  static final String SOCKET = "socket";
  static final String PLUG = "plug";
  static final String HOSE = "hose";
  static final String ADAPTER = "adapter";
  static final String SPLITTER = "splitter";

  private static final String CAPACITY =
      "a rating such as \"Cv 1.4\", or an object with conductance, see docs/job-file.md";

  /** A complaint names no more profiles. */
  private static final int MOST_NAMED = 20;

  private static final List<String> REGULATORS =
      Stream.of(RegulatorKind.values()).map(RegulatorKind::toString).toList();

  private static final List<String> KINDS = List.copyOf(kindsOfParts());

  private final ReferenceSet set;
  private final Optional<String> currency;
  private final List<String> remarks;

  /** The ends that were read, by their texts: a catalogue has few, each of them thousands of times. */
  private final Map<String, End> ends = new HashMap<>();

  /** Reads parts whose profiles are of a set, and keeps what their writer ought to know. */
  PartFields(ReferenceSet set, Optional<String> currency, List<String> remarks) {
    this.set = set;
    this.currency = currency;
    this.remarks = remarks;
  }

  private static List<String> kindsOfParts() {
    List<String> kinds = new ArrayList<>(List.of(SOCKET, PLUG, HOSE, ADAPTER));
    kinds.addAll(REGULATORS);
    kinds.add(SPLITTER);
    for (DeviceKind device : DeviceKind.values()) {
      kinds.add(device.toString());
    }
    return kinds;
  }

  /** The words for what a part can be. */
  static List<String> kinds() {
    return KINDS;
  }

  /** The words for what a regulator can be in one piece with. */
  static List<String> regulators() {
    return REGULATORS;
  }

  /** A part of a catalogue. */
  Part ofCatalogue(Field item) throws WrongFileException {
    return listed(item).part();
  }

  /** The same with the figures that are printed beside it. */
  ListedPart listed(Field item) throws WrongFileException {
    String kind =
        item.field("kind", "such as socket, plug, hose or adapter").oneOf(kinds(), word -> word);
    Part part = part(item, kind, factsOfCatalogue(item));
    ListedPart listed = PrintedFields.beside(part, item);
    item.requireNothingElse();
    return listed;
  }

  /** What an article of a catalogue tells of itself, whatever it is. */
  PartFacts factsOfCatalogue(Field item) throws WrongFileException {
    String id = item.field("id", "what the catalogue calls the part").text();
    String name = item.field("name", "what people call the part").text();
    return priced(item, facts(item, id, name));
  }

  /** A part that is there and stands in no catalogue. */
  Part there(Field item, String kind, String slot) throws WrongFileException {
    Optional<Field> name = item.find("name");
    String called = name.isPresent() ? name.get().text() : slot;
    for (String ofCatalogue : List.of("id", "kind", "price", "cost")) {
      if (item.names().contains(ofCatalogue)) {
        throw item.field(ofCatalogue, "")
            .wrong(
                "belongs to a part of a catalogue; a part that is there needs none, leave it out");
      }
    }
    Part part = part(item, kind, facts(item, called, called).asExisting());
    item.requireNothingElse();
    return part;
  }

  private Part part(Field item, String kind, PartFacts facts) throws WrongFileException {
    return switch (kind) {
      case SOCKET -> socket(item, facts);
      case PLUG ->
        new Part.Plug(
            facts, profileId(item.field("profile", "the id of a profile"), set), end(item));
      case HOSE -> hose(item, facts);
      case ADAPTER -> adapter(item, facts);
      case SPLITTER -> splitter(item, facts);
      default ->
        regulators().contains(kind)
            ? regulator(item, RegulatorKind.parse(kind), facts)
            : device(item, DeviceKind.parse(kind), facts);
    };
  }

  private Part socket(Field item, PartFacts facts) throws WrongFileException {
    Set<String> takes = new LinkedHashSet<>();
    for (Field profile : item.field("takes", "a list of ids of profiles").items()) {
      takes.add(profileId(profile, set));
    }
    End end = end(item);
    CapacityRange capacity = capacity(item);
    return item.build(() -> new Part.Socket(facts, takes, end, capacity));
  }

  private Part hose(Field item, PartFacts facts) throws WrongFileException {
    HoseBore named =
        item.field(HOSE, "the bore it is named by, such as \"3/8 in\"").as(HoseBore::parse);
    PartFacts told = facts;
    Optional<Field> dissipates = item.find("staticDissipative");
    if (dissipates.isPresent()) {
      told = told.withStaticDissipative(dissipates.get().yes());
    }
    Optional<Field> outside = item.find("outsideDiameter", "a length such as \"18 mm\"");
    if (outside.isPresent()) {
      PartFacts soFar = told;
      Length diameter = outside.get().as(Length::parse);
      told = outside.get().build(() -> soFar.withOutsideDiameter(diameter));
    }
    ConduitRange conduit = FlowFields.conduitRange(item, Optional.of(named));
    FlowFields.remarkOnBore(item, conduit, remarks);
    FlowFields.remarkOnName(item, named, conduit, remarks);
    FlowFields.remarkOnSize(item, conduit, remarks);
    End end = end(item);
    return new Part.Hose(told, named, conduit, end, otherEnd(item, end));
  }

  private Part adapter(Field item, PartFacts facts) throws WrongFileException {
    End end = end(item);
    End other = read(item.field("otherEnd", Accepted.END));
    return new Part.Adapter(facts, end, other, FlowFields.conduit(item));
  }

  private Part device(Field item, DeviceKind kind, PartFacts facts) throws WrongFileException {
    if (kind == DeviceKind.REEL && item.names().contains(HOSE)) {
      throw item.field(HOSE, "")
          .wrong(
              "is told of a reel in the line of a job, which is there already; in a catalogue give"
                  + " capacity, what the reel with its hose lets through, such as \"40 scfm at 100 psig, 5 psi"
                  + " drop\"");
    }
    End end = end(item);
    End other = otherEnd(item, end);
    return new Part.Device(facts, kind, capacity(item), end, other);
  }

  private Part regulator(Field item, RegulatorKind kind, PartFacts facts)
      throws WrongFileException {
    End end = end(item);
    End other = otherEnd(item, end);
    RegulatorRange range = regulator(item, capacity(item));
    return item.build(() -> new Part.Regulator(facts, kind, range, end, other));
  }

  /** A regulator of a capacity, with its curve or its droop; of one that is not told, all that is usual. */
  static RegulatorRange regulator(Field item, CapacityRange capacity) throws WrongFileException {
    Optional<RegulatorCurve> curve = CurveField.in(item, "atFlow");
    if (curve.isPresent()) {
      return item.build(() -> RegulatorRange.ofCurve(capacity, curve.get()));
    }
    Optional<Droop> told = Droop.in(item);
    return item.build(() -> told.map(droop ->
            new RegulatorRange(capacity, Range.exactly(droop.by()), Optional.of(droop.atFlow())))
        .orElseGet(() -> RegulatorRange.ofUntoldDroop(capacity)));
  }

  private Part splitter(Field item, PartFacts facts) throws WrongFileException {
    End end = end(item);
    List<End> outlets = new ArrayList<>();
    Field told = item.field("outlets", "a list of its ends towards the lines, at least two");
    for (Field outlet : told.items()) {
      outlets.add(read(outlet));
    }
    CapacityRange capacity = capacity(item);
    return told.build(() -> new Part.Splitter(facts, capacity, end, outlets));
  }

  /** By how much less a regulator holds while air flows. */
  record Droop(PressureDrop by, FreeAirFlow atFlow) {

    /** The droop and the flow it belongs to; both or neither. */
    static Optional<Droop> in(Field item) throws WrongFileException {
      Optional<Field> droop = item.find("droop", "a pressure loss such as \"0.4 bar\"");
      Optional<Field> flow = item.find("atFlow");
      if (droop.isEmpty() && flow.isEmpty()) {
        return Optional.empty();
      }
      PressureDrop by = item.field(
              "droop", "by how much less it holds at atFlow, such as \"6 psi\"")
          .most(PressureDrop::parse);
      FreeAirFlow at = item.field("atFlow", "the flow at which it droops so, such as \"30 scfm\"")
          .least(FreeAirFlow::parse);
      return Optional.of(new Droop(by, at));
    }
  }

  private static CapacityRange capacity(Field item) throws WrongFileException {
    return FlowFields.capacityRange(item.field("capacity", CAPACITY));
  }

  /** The id of a profile of a set. */
  static String profileId(Field field, ReferenceSet set) throws WrongFileException {
    String id = field.text();
    if (set.profile(id).isEmpty()) {
      List<String> ids = set.profiles().stream().map(PlugProfile::id).toList();
      throw field.wrong("\"" + id + "\" is no profile of this catalogue" + NearWord.named(id, ids)
          + "; accepted: "
          + String.join(", ", ids.subList(0, Math.min(MOST_NAMED, ids.size())))
          + (ids.size() > MOST_NAMED ? ", … (" + ids.size() + " in all)" : ""));
    }
    return id;
  }

  private End read(Field field) throws WrongFileException {
    return EndField.in(field, text -> ends.computeIfAbsent(text, End::parse), remarks);
  }

  End end(Field item) throws WrongFileException {
    return read(item.field("end", Accepted.END));
  }

  /** The end towards the tool; the same as the other where it was left out. */
  End otherEnd(Field item, End end) throws WrongFileException {
    Optional<Field> other = item.find("otherEnd", Accepted.END);
    return other.isPresent() ? read(other.get()) : end;
  }

  private static PartFacts facts(Field item, String id, String name) throws WrongFileException {
    PartFacts facts = item.build(() -> PartFacts.of(id, name));
    Optional<Temperatures> temperatures = Temperatures.stood(item);
    if (temperatures.isPresent()) {
      PartFacts before = facts;
      Temperatures told = temperatures.get();
      facts = item.build(() -> before.withTemperatures(told.coldest(), told.hottest()));
    }
    Optional<Field> rated = item.find("rated", Accepted.GAUGE);
    if (rated.isPresent()) {
      PartFacts soFar = facts;
      GaugePressure rating = rated.get().least(GaugePressure::parse);
      facts = rated.get().build(() -> soFar.withRating(rating));
    }
    Optional<Field> material = item.find("material");
    if (material.isPresent()) {
      facts =
          facts.withMaterial(material.get().oneOf(List.of(Material.values()), Material::toString));
    }
    Optional<Field> air = item.find("keptFor");
    if (air.isPresent()) {
      facts = facts.withLubrication(
          air.get().oneOf(List.of(Lubrication.values()), Lubrication::toString));
    }
    facts = item.flag("sleeveGuarded") ? facts.withSleeveGuarded() : facts;
    facts = item.flag("vented") ? facts.withVent() : facts;
    return item.flag("alreadyThere") ? facts.asExisting() : facts;
  }

  /** Between which temperatures something lives. */
  record Temperatures(Temperature coldest, Temperature hottest) {

    /** Those that something stands, both or neither. */
    static Optional<Temperatures> stood(Field item) throws WrongFileException {
      if (item.find("coldest").isEmpty() && item.find("hottest").isEmpty()) {
        return Optional.empty();
      }
      Field low = item.field("coldest", "the lowest temperature, such as \"-10 °C\"");
      Field high = item.field("hottest", "the highest temperature, such as \"60 °C\"");
      Temperatures told =
          new Temperatures(low.most(Temperature::parse), high.least(Temperature::parse));
      requireOrder(low, told.coldest, high, told.hottest);
      return Optional.of(told);
    }
  }

  /** Refuses a highest temperature below the lowest, both as they were typed. */
  static void requireOrder(Field low, Temperature coldest, Field high, Temperature hottest)
      throws WrongFileException {
    if (hottest.compareTo(coldest) < 0) {
      throw high.wrong("must be at least " + low.place() + ", \"" + low.text().strip()
          + "\", was \"" + high.text().strip() + "\"; change one of the two");
    }
  }

  private PartFacts priced(Field item, PartFacts facts) throws WrongFileException {
    PartFacts told = facts;
    Optional<Field> price = item.find("price", "such as \"12.50\"");
    if (price.isPresent()) {
      Money each = money(price.get());
      told = price.get().build(() -> facts.withPrice(each));
    }
    Optional<Field> cost = item.find("cost", "such as \"12.50\"");
    if (cost.isPresent()) {
      Money each = money(cost.get());
      PartFacts soFar = told;
      told = cost.get().build(() -> soFar.withCost(each));
    }
    return told;
  }

  private Money money(Field amount) throws WrongFileException {
    if (currency.isEmpty()) {
      throw amount.wrong(
          "needs the currency of the catalogue; say \"currency\": \"EUR\" or what yours is"
              + " beside its name");
    }
    if (!amount.isText()) {
      return amount.as(Money::parse); // refused, with what is accepted
    }
    String typed = amount.text().strip();
    if (!typed.isEmpty() && "$€£¥".indexOf(typed.charAt(0)) >= 0) {
      throw amount.wrong("was \"" + typed + "\"; type the amount without a sign, such as \""
          + typed.substring(1).strip() + "\": its currency stands once, in currency");
    }
    if (typed.isEmpty() || !Character.isLetter(typed.charAt(typed.length() - 1))) {
      return amount.as(number -> Money.parse(number + " " + currency.get()));
    }
    Money price = amount.as(Money::parse);
    if (!price.currency().equals(currency.get())) {
      throw amount.wrong("is in " + price.currency() + ", the catalogue in " + currency.get()
          + "; airfit knows no rates, turn it into " + currency.get());
    }
    return price;
  }
}
