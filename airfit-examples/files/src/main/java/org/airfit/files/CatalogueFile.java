package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Money;
import org.airfit.quantity.Temperature;
import org.airfit.select.Catalogue;
import org.airfit.select.Lubrication;
import org.airfit.select.Material;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;

/** What a catalogue file says; docs/job-file.md has the fields. */
public final class CatalogueFile {

  /** A complaint names no more profiles. */
  private static final int MOST_NAMED = 20;

  private CatalogueFile() {}

  /**
   * Reads a catalogue and, if it names one, the set file with its profiles.
   *
   * @param document a JSON file
   * @return the catalogue
   * @throws WrongFileException if a field is missing, misspelt or refused
   */
  public static ShopCatalogue read(Document document) throws WrongFileException {
    Field root = Field.of(document);
    String name = root.field("catalogue", "the name of the catalogue").text();
    ReferenceSet set = profiles(document, root, name);
    Optional<Field> currency = root.find("currency");
    Optional<String> money =
        currency.isPresent() ? Optional.of(currency.get().text()) : Optional.empty();
    List<Part> parts = new ArrayList<>();
    List<String> remarks = new ArrayList<>();
    for (Field item : root.field("parts", "a list of parts").items()) {
      parts.add(part(item, set, money, remarks));
    }
    root.requireNothingElse();
    return new ShopCatalogue(name, set, root.build(() -> Catalogue.of(parts)), remarks);
  }

  /** The profiles in the catalogue itself, or in a set file of the shop's own. */
  private static ReferenceSet profiles(Document document, Field root, String name)
      throws WrongFileException {
    Optional<Field> own = root.find("profileSet");
    if (own.isPresent()) {
      if (root.find("profiles").isPresent()) {
        throw own.get().wrong("stands beside profiles; keep one of the two");
      }
      return ReferenceSetFile.read(document.shelf().open(own.get().text()));
    }
    List<PlugProfile> profiles = new ArrayList<>();
    for (Field item : root.field(
            "profiles", "a list of plug profiles; or profileSet, the path of a set file")
        .items()) {
      profiles.add(ProfileFields.profile(item, false, PieceReadings.of(item)));
    }
    return root.build(() -> ReferenceSet.of(name, profiles));
  }

  private static Part part(
      Field item, ReferenceSet set, Optional<String> currency, List<String> remarks)
      throws WrongFileException {
    Field kind = item.field("kind", "socket, plug, hose or adapter");
    PartFacts facts = priced(item, facts(item), currency);
    Part part = switch (kind.oneOf(List.of("socket", "plug", "hose", "adapter"), word -> word)) {
      case "socket" -> socket(item, facts, set, remarks);
      case "plug" ->
        new Part.Plug(
            facts,
            profileId(item.field("profile", "the id of a profile"), set),
            end(item, "end", remarks));
      case "hose" -> hose(item, facts, remarks);
      default ->
        new Part.Adapter(
            facts,
            end(item, "end", remarks),
            end(item, "otherEnd", remarks),
            FlowFields.conduit(item));
    };
    item.requireNothingElse();
    return part;
  }

  private static Part socket(Field item, PartFacts facts, ReferenceSet set, List<String> remarks)
      throws WrongFileException {
    Set<String> takes = new LinkedHashSet<>();
    for (Field profile : item.field("takes", "a list of ids of profiles").items()) {
      takes.add(profileId(profile, set));
    }
    End end = end(item, "end", remarks);
    FlowCapacity capacity = FlowFields.capacity(
        item.field("capacity", "an object with conductance or with a rated flow"));
    return item.build(() -> new Part.Socket(facts, takes, end, capacity));
  }

  private static Part hose(Field item, PartFacts facts, List<String> remarks)
      throws WrongFileException {
    HoseBore named =
        item.field("hose", "the bore it is named by, such as \"3/8 in\"").as(HoseBore::parse);
    PartFacts told = facts;
    Optional<Field> dissipates = item.find("staticDissipative");
    if (dissipates.isPresent()) {
      told = told.withStaticDissipative(dissipates.get().yes());
    }
    return new Part.Hose(
        told,
        named,
        FlowFields.conduit(item),
        end(item, "end", remarks),
        end(item, "otherEnd", remarks));
  }

  private static String profileId(Field field, ReferenceSet set) throws WrongFileException {
    String id = field.text();
    if (set.profile(id).isEmpty()) {
      List<String> ids = set.profiles().stream().map(PlugProfile::id).toList();
      throw field.wrong("\"" + id + "\" is no profile of this catalogue; accepted: "
          + String.join(", ", ids.subList(0, Math.min(MOST_NAMED, ids.size())))
          + (ids.size() > MOST_NAMED ? ", … (" + ids.size() + " in all)" : ""));
    }
    return id;
  }

  private static End end(Field item, String field, List<String> remarks) throws WrongFileException {
    return EndField.in(item.field(field, Accepted.END), remarks);
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
      facts = facts.withLubrication(
          air.get().oneOf(List.of(Lubrication.values()), Lubrication::toString));
    }
    facts = item.flag("sleeveGuarded") ? facts.withSleeveGuarded() : facts;
    facts = item.flag("vented") ? facts.withVent() : facts;
    return item.flag("alreadyThere") ? facts.asExisting() : facts;
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
              "needs the currency of the catalogue; say \"currency\": \"EUR\" or what yours is beside its"
                  + " name");
    }
    Money each = price.get().as(amount -> Money.parse(amount + " " + currency.get()));
    return price.get().build(() -> facts.withPrice(each));
  }
}
