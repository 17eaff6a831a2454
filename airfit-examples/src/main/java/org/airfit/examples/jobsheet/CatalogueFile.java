package org.airfit.examples.jobsheet;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.select.Catalogue;
import org.airfit.select.Lubrication;
import org.airfit.select.Material;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;

/** Reads a catalogue: the plug profiles a shop knows and the parts it can offer. */
record CatalogueFile(String name, ReferenceSet profiles, Catalogue parts) {

  private static final String A_LENGTH = "a length such as \"12.7 mm\" or \"1/2 in\"";
  private static final String AN_END =
      "a text such as \"3/8 NPT male\", \"G 1/2 female\" or \"3/8 in barb\"";

  static CatalogueFile read(Path path) throws WrongFileException {
    Field root = Field.ofFile(path);
    String name = root.field("catalogue", "the name of the catalogue").text();
    ReferenceSet set = profiles(path, root, name);
    Optional<Field> currency = root.find("currency");
    Optional<String> money =
        currency.isPresent() ? Optional.of(currency.get().text()) : Optional.empty();
    List<Part> parts = new ArrayList<>();
    for (Field item : root.field("parts", "a list of parts").items()) {
      parts.add(part(item, set, money));
    }
    root.requireNothingElse();
    return new CatalogueFile(name, set, root.build(() -> Catalogue.of(parts)));
  }

  /** The profiles in the catalogue itself, or in a set file of the shop's own. */
  private static ReferenceSet profiles(Path path, Field root, String name)
      throws WrongFileException {
    Optional<Field> own = root.find("profileSet");
    if (own.isPresent()) {
      if (root.find("profiles").isPresent()) {
        throw own.get().wrong("stands beside profiles; keep one of the two");
      }
      return ReferenceSetFile.read(path.resolveSibling(own.get().text()));
    }
    List<PlugProfile> profiles = new ArrayList<>();
    for (Field item : root.field(
            "profiles", "a list of plug profiles; or profileSet, the path of a set file")
        .items()) {
      profiles.add(ProfileFields.profile(item, false));
    }
    return root.build(() -> ReferenceSet.of(name, profiles));
  }

  private static Part part(Field item, ReferenceSet set, Optional<String> currency)
      throws WrongFileException {
    Field kind = item.field("kind", "socket, plug, hose or adapter");
    PartFacts facts = priced(item, facts(item), currency);
    Part part = switch (kind.oneOf(List.of("socket", "plug", "hose", "adapter"), word -> word)) {
      case "socket" -> socket(item, facts, set);
      case "plug" ->
        new Part.Plug(
            facts, profileId(item.field("profile", "the id of a profile"), set), end(item, "end"));
      case "hose" -> hose(item, facts);
      default -> new Part.Adapter(facts, end(item, "end"), end(item, "otherEnd"), conduit(item));
    };
    item.requireNothingElse();
    return part;
  }

  private static Part socket(Field item, PartFacts facts, ReferenceSet set)
      throws WrongFileException {
    Set<String> takes = new LinkedHashSet<>();
    for (Field profile : item.field("takes", "a list of ids of profiles").items()) {
      takes.add(profileId(profile, set));
    }
    End end = end(item, "end");
    FlowCapacity capacity =
        capacity(item.field("capacity", "an object with conductance or with a rated flow"));
    return item.build(() -> new Part.Socket(facts, takes, end, capacity));
  }

  private static Part hose(Field item, PartFacts facts) throws WrongFileException {
    HoseBore named =
        item.field("hose", "the bore it is named by, such as \"3/8 in\"").as(HoseBore::parse);
    return new Part.Hose(facts, named, conduit(item), end(item, "end"), end(item, "otherEnd"));
  }

  private static String profileId(Field field, ReferenceSet set) throws WrongFileException {
    String id = field.text();
    if (set.profile(id).isEmpty()) {
      throw field.wrong("\"" + id + "\" is no profile of this catalogue; accepted: "
          + String.join(", ", set.profiles().stream().map(PlugProfile::id).toList()));
    }
    return id;
  }

  private static End end(Field item, String field) throws WrongFileException {
    return item.field(field, AN_END).as(End::parse);
  }

  private static PartFacts facts(Field item) throws WrongFileException {
    String id = item.field("id", "what the catalogue calls the part").text();
    String name = item.field("name", "what people call the part").text();
    PartFacts facts = item.build(() -> PartFacts.of(id, name));
    Optional<Field> coldest = item.find("coldest");
    if (coldest.isPresent()) {
      Temperature low = coldest.get().as(Temperature::parse);
      Field hottest = item.field("hottest", "the highest temperature, such as \"60 °C\"");
      Temperature high = hottest.as(Temperature::parse);
      PartFacts before = facts;
      facts = hottest.build(() -> before.withTemperatures(low, high));
    }
    Optional<Field> rated = item.find("rated");
    if (rated.isPresent()) {
      PartFacts soFar = facts;
      GaugePressure rating = rated.get().as(GaugePressure::parse);
      facts = rated.get().build(() -> soFar.withRating(rating));
    }
    Optional<Field> material = item.find("material");
    if (material.isPresent()) {
      facts =
          facts.withMaterial(material.get().oneOf(List.of(Material.values()), Material::toString));
    }
    Optional<Field> air = item.find("keptFor");
    if (air.isPresent()) {
      facts = facts.withLubrication(air.get().oneOf(List.of(Lubrication.values()), Lubrication::toString));
    }
    facts = flag(item, "sleeveGuarded") ? facts.withSleeveGuarded() : facts;
    facts = flag(item, "vented") ? facts.withVent() : facts;
    return flag(item, "alreadyThere") ? facts.asExisting() : facts;
  }

  private static PartFacts priced(Field item, PartFacts facts, Optional<String> currency)
      throws WrongFileException {
    Optional<Field> price = item.find("price");
    if (price.isEmpty()) {
      return facts;
    }
    if (currency.isEmpty()) {
      throw price
          .get()
          .wrong(
              "needs the currency of the catalogue; say \"currency\": \"EUR\" or what yours is beside its name");
    }
    Money each = price.get().as(amount -> Money.parse(amount + " " + currency.get()));
    return price.get().build(() -> facts.withPrice(each));
  }

  /** A field that is true or false, and false where it is missing. */
  static boolean flag(Field item, String field) throws WrongFileException {
    Optional<Field> found = item.find(field);
    return found.isPresent() && found.get().yes();
  }

  /** The bore, length, roughness and fittings of a line. */
  static Conduit conduit(Field item) throws WrongFileException {
    Length bore = item.field("bore", A_LENGTH).as(Length::parse);
    Length length =
        item.field("length", "a length such as \"10 m\" or \"25 ft\"").as(Length::parse);
    Length roughness = item.field(
            "roughness", "the roughness of the wall, such as \"0.045 mm\" for new steel pipe")
        .as(Length::parse);
    Optional<Field> fittings = item.find("fittings");
    double k = fittings.isPresent() ? fittings.get().number() : 0.0;
    return item.build(() -> Conduit.of(bore, length, roughness).withFittings(k));
  }

  /** A flow capacity, by its conductance or by a rating with its conditions. */
  static FlowCapacity capacity(Field field) throws WrongFileException {
    double b = field
        .field("criticalPressureRatio", "b of ISO 6358, a number such as 0.3")
        .number();
    Optional<Field> conductance = field.find("conductance");
    FlowCapacity capacity;
    if (conductance.isPresent()) {
      SonicConductance c = conductance.get().as(SonicConductance::parse);
      capacity = field.build(() -> FlowCapacity.of(c, b));
    } else {
      FreeAirFlow rated = field
          .field("flow", "a free-air flow such as \"34 scfm\"; or give the conductance instead")
          .as(FreeAirFlow::parse);
      AbsolutePressure inlet = field
          .field("inlet", "the absolute pressure in front of the part, such as \"7.2 bar(a)\"")
          .as(AbsolutePressure::parse);
      PressureDrop drop = field
          .field("drop", "the drop across the part, such as \"5 psi\"")
          .as(PressureDrop::parse);
      Temperature temperature = field
          .field("temperature", "the temperature of the rating, such as \"20 °C\"")
          .as(Temperature::parse);
      capacity = field.build(() -> FlowCapacity.ofRatedFlow(rated, inlet, drop, temperature, b));
    }
    field.requireNothingElse();
    return capacity;
  }
}
