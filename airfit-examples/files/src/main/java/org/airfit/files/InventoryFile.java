package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.line.ConduitRange;
import org.airfit.plug.PairOutcome;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.ToldPair;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.NearWord;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Medium;
import org.airfit.select.Bay;
import org.airfit.select.CouplingInventory;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/** What an inventory of couplings says, a JSON object; docs/inventory-file.md has the fields. */
public final class InventoryFile {

  private static final String VERSION = "airfitInventory";

  private static final List<PairOutcome> TOLD =
      List.of(PairOutcome.FITS, PairOutcome.LEAKS, PairOutcome.LETS_GO, PairOutcome.DOES_NOT_GO_IN);

  private final Field file;
  private final ReferenceSet set;
  private final List<String> remarks;

  /** The profiles of lines of other media, which no catalogue for air has. */
  private final Set<String> apart = new LinkedHashSet<>();

  /** The universal sockets in use, by their profiles as they stand there, with a slash between. */
  private final Set<String> universal = new LinkedHashSet<>();

  private InventoryFile(Field file, ShopCatalogue catalogue) {
    this.file = file;
    this.set = catalogue.profiles();
    this.remarks = new ArrayList<>(catalogue.remarks());
  }

  /**
   * Reads an inventory and the catalogue it names.
   *
   * @param document a JSON object
   * @return the inventory
   * @throws WrongFileException if a field is missing, misspelt or refused, in it or in the catalogue
   */
  public static InventoryJob read(Document document) throws WrongFileException {
    Field file = FileForm.of(document, VERSION);
    Field named = file.field("catalogue", "the path of a catalogue file, seen from this one");
    ShopCatalogue catalogue = CatalogueFile.named(named.text(), document.shelf());
    return new InventoryFile(file, catalogue).read(catalogue);
  }

  private InventoryJob read(ShopCatalogue catalogue) throws WrongFileException {
    String title = file.field("title", "what is asked").text();
    String customer = file.field("customer", "whose couplings they are").text();
    AbsolutePressure atmosphere = FlowFields.atmosphere(
        file.field("atmosphere", "an absolute pressure such as 1.013 bar(a)"));
    Temperature temperature =
        file.field("temperature", "a temperature such as 20 °C").as(Temperature::parse);
    AirState outside = file.build(() -> AirState.of(atmosphere, temperature));
    List<Field> items =
        file.field("bays", "a list of places with their sockets and plugs").items();
    List<Bay> bays = new ArrayList<>();
    for (Field item : items) {
      bays.add(bay(item));
    }
    UnitSystem units = units(items);
    List<CouplingInventory.OnShelf> shelf = new ArrayList<>();
    Optional<Field> told = file.find("shelf", "a list such as [{\"part\": \"P-1\", \"count\": 4}]");
    if (told.isPresent()) {
      for (Field item : told.get().items()) {
        shelf.add(onShelf(item));
      }
    }
    Optional<CouplingInventory.Labour> labour = labour();
    List<ToldPair> pairs = new ArrayList<>();
    Optional<Field> tried = file.find("pairs", "a list of plugs in sockets of another profile");
    if (tried.isPresent()) {
      for (Field item : tried.get().items()) {
        pairs.add(pair(item));
      }
    }
    Optional<CouplingInventory.Restock> restock = restock();
    file.requireNothingElse();
    CouplingInventory inventory = file.build(() ->
        new CouplingInventory(bays, catalogue.parts(), shelf, labour, pairs, outside, restock));
    return new InventoryJob(title, customer, inventory, set, units, remarks);
  }

  private UnitSystem units(List<Field> bays) throws WrongFileException {
    Optional<UnitSystem> told = TypedUnits.told(file);
    if (told.isPresent()) {
      return told.get();
    }
    for (Field bay : bays) {
      Optional<Field> pressure = bay.find("pressure");
      if (pressure.isPresent()) {
        return TypedUnits.ofPressure(pressure.get());
      }
    }
    return UnitSystem.SI;
  }

  private Bay bay(Field item) throws WrongFileException {
    String name = item.field("name", "what to call the bay").text().strip();
    Optional<Field> carried = item.find("medium", "what its line carries");
    Medium medium = carried.isPresent()
        ? carried.get().oneOf(List.of(Medium.values()), Medium::toString)
        : Medium.COMPRESSED_AIR;
    boolean isAir = medium == Medium.COMPRESSED_AIR;
    Optional<Field> told = isAir
        ? Optional.of(item.field(
            "pressure",
            "the gauge pressure at its sockets while the tools run, such as 80 to 90 psig"))
        : Optional.empty();
    Optional<Range<GaugePressure>> pressure =
        told.isPresent() ? Optional.of(told.get().range(GaugePressure::parse)) : Optional.empty();
    List<Bay.Sockets> sockets = new ArrayList<>();
    for (Field row : item.field("sockets", "a list of the sockets in use").items()) {
      sockets.add(sockets(row, isAir));
    }
    List<Bay.Plugs> plugs = new ArrayList<>();
    for (Field row : item.field("plugs", "a list of the plugs in use").items()) {
      plugs.add(plugs(row, isAir));
    }
    item.requireNothingElse();
    return item.build(() -> new Bay(name, medium, pressure, sockets, plugs));
  }

  /** A profile: one of the catalogue for air, any other word for another medium. */
  private String profile(Field field, boolean isAir) throws WrongFileException {
    if (isAir) {
      return PartFields.profileId(field, set);
    }
    String id = field.text().strip();
    apart.add(id);
    return id;
  }

  private Optional<End> onto(Field row, boolean isAir) throws WrongFileException {
    return isAir
        ? Optional.of(EndField.in(row.field("onto", Accepted.END), remarks))
        : Optional.empty();
  }

  private Bay.Sockets sockets(Field row, boolean isAir) throws WrongFileException {
    String place = row.field("place", "where the sockets are").text();
    Set<String> takes = new LinkedHashSet<>();
    for (Field profile : row.field("takes", "a list of ids of profiles").items()) {
      takes.add(profile(profile, isAir));
    }
    if (takes.size() > 1) {
      universal.add(String.join("/", takes));
    }
    Optional<End> onto = onto(row, isAir);
    int count = row.field("count", "how many there are").wholeNumber();
    row.requireNothingElse();
    return row.build(() -> new Bay.Sockets(place, takes, onto, count));
  }

  private Bay.Plugs plugs(Field row, boolean isAir) throws WrongFileException {
    String tool = row.field("tool", "what the plugs are on").text();
    String profile = profile(row.field("profile", "the id of a profile"), isAir);
    Optional<End> onto = onto(row, isAir);
    int count = row.field("count", "how many there are").wholeNumber();
    Optional<Bay.Need> need = isAir ? need(row) : Optional.empty();
    row.requireNothingElse();
    return row.build(() -> new Bay.Plugs(tool, profile, onto, count, need));
  }

  private static Optional<Bay.Need> need(Field row) throws WrongFileException {
    Optional<Field> air = row.find("air");
    Optional<Field> hose = row.find("hose");
    if (air.isEmpty()) {
      for (String field : List.of("needs", "hose")) {
        Optional<Field> alone = row.find(field);
        if (alone.isPresent()) {
          throw alone
              .get()
              .wrong("is told without air; give the air of the tool too, or leave it out");
        }
      }
      return Optional.empty();
    }
    Range<FreeAirFlow> flow = air.get().range(FreeAirFlow::parse);
    GaugePressure needed = row.field("needs", Accepted.GAUGE).most(GaugePressure::parse);
    Optional<ConduitRange> line = Optional.empty();
    if (hose.isPresent()) {
      line = Optional.of(FlowFields.conduitRange(hose.get()));
      hose.get().requireNothingElse();
    }
    Optional<ConduitRange> between = line;
    return Optional.of(row.build(() -> new Bay.Need(flow, needed, between)));
  }

  private static CouplingInventory.OnShelf onShelf(Field item) throws WrongFileException {
    String part = item.field("part", "the id of a part of the catalogue").text();
    int count = item.field("count", "how many there are").wholeNumber();
    item.requireNothingElse();
    return item.build(() -> new CouplingInventory.OnShelf(part, count));
  }

  private Optional<CouplingInventory.Labour> labour() throws WrongFileException {
    Optional<Field> told = file.find("labour");
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field item = told.get();
    Money socket = PriceField.of(item.field("perSocket", "such as 9.00 EUR"));
    Money plug = PriceField.of(item.field("perPlug", "such as 4.00 EUR"));
    item.requireNothingElse();
    return Optional.of(item.build(() -> new CouplingInventory.Labour(socket, plug)));
  }

  private Optional<CouplingInventory.Restock> restock() throws WrongFileException {
    Optional<Field> told = file.find("restock");
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field item = told.get();
    double worn = item.field(
            "wornPerYear", "the share of the pieces that is replaced in a year, such as 0.1")
        .number();
    int days = item.field("deliveryDays", "a number of days such as 14").wholeNumber();
    double risk = item.field("risk", "the chance that the spare pieces are too few, such as 0.05")
        .number();
    item.requireNothingElse();
    return Optional.of(item.build(() -> new CouplingInventory.Restock(worn, days, risk)));
  }

  private ToldPair pair(Field item) throws WrongFileException {
    String plug = known(item.field("plug", "the id of the profile of the plug"));
    Field into = item.field(
        "socket", "the id of the profile of the socket, or ids such as a/b of a universal one");
    String socket = universal.contains(into.text().strip()) ? into.text().strip() : known(into);
    PairOutcome outcome =
        item.field("happens", "such as does not go in").oneOf(TOLD, PairOutcome::toString);
    String by = item.field("by", "who says so, such as tried on 2026-11-20, or the maker")
        .text();
    item.requireNothingElse();
    return item.build(() -> new ToldPair(plug, socket, outcome, Source.measured(by)));
  }

  private String known(Field field) throws WrongFileException {
    String id = field.text().strip();
    List<String> ids =
        new ArrayList<>(set.profiles().stream().map(PlugProfile::id).toList());
    ids.addAll(apart);
    if (!ids.contains(id)) {
      throw field.wrong("\"" + id + "\" is no profile of the catalogue, nor one of another medium"
          + NearWord.named(id, ids) + "; accepted: " + String.join(", ", ids));
    }
    return id;
  }
}
