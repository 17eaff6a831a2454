package org.airfit.files;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.measure.Instrument;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.NearWord;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.select.Catalogue;
import org.airfit.select.Environment;
import org.airfit.select.JobMix;
import org.airfit.select.ListedPart;
import org.airfit.select.Part;
import org.airfit.select.PriceList;
import org.airfit.working.UnitSystem;

/** What the check of a price list says, a JSON object; docs/price-list-file.md has the fields. */
public final class PriceListFile {

  private static final String VERSION = "airfitPriceList";

  private final Field file;
  private final List<String> remarks = new ArrayList<>();

  private PriceListFile(Field file) {
    this.file = file;
  }

  /**
   * Reads what is asked and the price list it names: a catalogue, of which articles that cannot be read are told, each
   * fault with its place.
   *
   * @param document a JSON object
   * @return what is asked
   * @throws WrongFileException if a field is missing, misspelt or refused, other than in an article of the list
   */
  public static PriceListJob read(Document document) throws WrongFileException {
    Field file = FileForm.of(document, VERSION);
    return new PriceListFile(file).readList(document);
  }

  private PriceListJob readList(Document document) throws WrongFileException {
    String title = file.field("title", "what is asked").text();
    String customer = file.field("customer", "whose list it is").text();
    Optional<Field> caliper = file.find("caliper");
    Instrument instrument = caliper.isPresent()
        ? caliper.get().oneOf(List.of(Instrument.values()), Instrument::label)
        : Instrument.DIGITAL_CALIPER;
    Optional<Field> accepted = file.find("risk");
    double risk = accepted.isPresent() ? accepted.get().number() : PriceList.USUAL_RISK;
    Optional<Field> sets = file.find("soldTogether", "a list of lists of ids");
    List<End> ends = PriceList.USUAL_ENDS;
    Optional<Field> usual = file.find("usualEnds", "a list of ends such as \"G 1/2 female\"");
    if (usual.isPresent()) {
      ends = usual.get().all(End::parse);
    }
    Field named = file.field("list", "the path of a catalogue file, seen from this one");
    Document listed = document.shelf().open(named.text());
    Field root = Field.of(listed);
    ReferenceSet profiles = CatalogueFile.profilesOf(listed, root);
    Optional<Field> money = root.find("currency");
    Optional<String> currency =
        money.isPresent() ? Optional.of(money.get().text()) : Optional.empty();
    TolerantParts parts = new TolerantParts(profiles, currency, remarks);
    for (Field item : root.field("parts", "a list of parts").items()) {
      parts.add(item);
    }
    root.find("accessories"); // no air goes through them: they are not checked
    root.requireNothingElse();
    Optional<Field> told = file.find("mix", "the tools and places of the jobs that come");
    Optional<JobMix> mix = told.isPresent() ? Optional.of(mix(told.get())) : Optional.empty();
    UnitSystem units = units(told);
    file.requireNothingElse();
    List<End> usualEnds = ends;
    if (accepted.isPresent()) { // refused with its own place, before the articles come in
      accepted
          .get()
          .build(() -> new PriceList(List.of(), profiles, instrument, risk, List.of(), usualEnds));
    }
    List<Set<String>> together = sets.isPresent() ? together(sets.get(), parts) : List.of();
    PriceList list = file.build(
        () -> new PriceList(parts.read(), profiles, instrument, risk, together, usualEnds));
    Map<String, Part> once = new LinkedHashMap<>();
    for (ListedPart article : parts.read()) {
      once.putIfAbsent(article.id(), article.part());
    }
    Catalogue catalogue = file.build(() -> Catalogue.of(once.values()));
    return new PriceListJob(title, customer, list, catalogue, parts.unread(), mix, units, remarks);
  }

  /** The sets, without those of their parts that could not be read: these are told. */
  private List<Set<String>> together(Field sets, TolerantParts parts) throws WrongFileException {
    Set<String> read = new HashSet<>();
    parts.read().forEach(article -> read.add(article.id()));
    Set<String> unread = new HashSet<>();
    parts.unread().forEach(article -> unread.add(article.id()));
    List<Set<String>> together = new ArrayList<>();
    for (Field set : sets.items()) {
      Set<String> told = new LinkedHashSet<>();
      Set<String> left = new LinkedHashSet<>();
      for (Field item : set.items()) {
        String id = item.text();
        told.add(id);
        if (read.contains(id)) {
          left.add(id);
        } else if (unread.contains(id) || unread.contains("")) {
          remarks.add(item.place() + ": \"" + id
              + "\" could not be read, so that its set is checked without it");
        } else {
          throw item.wrong("was \"" + id + "\", which is no article of the list"
              + NearWord.named(id, List.copyOf(read)) + "; type the id of an article");
        }
      }
      if (told.size() < 2) {
        throw set.wrong(
            "names " + (told.isEmpty() ? "no part" : "one part only") + "; a set has two at least");
      }
      if (left.size() > 1) {
        together.add(left);
      }
    }
    return together;
  }

  private UnitSystem units(Optional<Field> mix) throws WrongFileException {
    Optional<UnitSystem> told = TypedUnits.told(file);
    if (told.isPresent()) {
      return told.get();
    }
    Optional<Field> atmosphere = mix.isPresent() ? mix.get().find("atmosphere") : Optional.empty();
    return atmosphere.isPresent() ? TypedUnits.ofPressure(atmosphere.get()) : UnitSystem.SI;
  }

  private JobMix mix(Field field) throws WrongFileException {
    int seed =
        field.field("seed", "a whole number; the same draws the same jobs").wholeNumber();
    int jobs = field.field("jobs", "how many jobs are drawn, such as 100").wholeNumber();
    AbsolutePressure atmosphere = FlowFields.atmosphere(
        field.field("atmosphere", "an absolute pressure such as 1.013 bar(a)"));
    Temperature temperature =
        field.field("temperature", "a temperature such as 20 °C").as(Temperature::parse);
    AirState outside = field.build(() -> AirState.of(atmosphere, temperature));
    List<JobMix.Tool> tools = new ArrayList<>();
    for (Field item : field.field("tools", "a list of tools").items()) {
      tools.add(tool(item));
    }
    List<JobMix.Place> places = new ArrayList<>();
    for (Field item : field.field("places", "a list of places").items()) {
      places.add(place(item));
    }
    Optional<Field> told = field.find("hoseLengths", "a list of lengths such as \"25 ft\"");
    List<Length> lengths = told.isPresent()
        ? told.get().all(Length::parse)
        : units(Optional.of(field)) == UnitSystem.US ? JobMix.FEET : JobMix.METRES;
    field.requireNothingElse();
    return field.build(() -> new JobMix(seed, jobs, tools, places, outside, lengths));
  }

  private JobMix.Tool tool(Field item) throws WrongFileException {
    String name = item.field("name", "what the tool is").text();
    double weight = weight(item);
    Range<FreeAirFlow> air =
        item.field("air", "a free-air flow such as \"8 to 12 scfm\"").range(FreeAirFlow::parse);
    GaugePressure needs = item.field("needs", Accepted.GAUGE).most(GaugePressure::parse);
    GaugePressure rated = item.field("rated", Accepted.GAUGE).least(GaugePressure::parse);
    End inlet = EndField.in(item.field("inlet", Accepted.END), remarks);
    item.requireNothingElse();
    return item.build(() -> new JobMix.Tool(name, weight, air, needs, rated, inlet));
  }

  private JobMix.Place place(Field item) throws WrongFileException {
    String name = item.field("name", "what the place is").text();
    double weight = weight(item);
    Range<GaugePressure> pressure =
        item.field("pressure", Accepted.GAUGE).range(GaugePressure::parse);
    End outlet = EndField.in(item.field("outlet", Accepted.END), remarks);
    Range<Length> reach =
        item.field("reach", "a length such as \"10 to 30 ft\"").range(Length::parse);
    Optional<Field> where = item.find("environment");
    Environment environment = where.isPresent()
        ? where.get().oneOf(List.of(Environment.values()), Environment::toString)
        : Environment.INDOORS;
    item.requireNothingElse();
    return item.build(() -> new JobMix.Place(name, weight, pressure, outlet, reach, environment));
  }

  private static double weight(Field item) throws WrongFileException {
    Optional<Field> told = item.find("weight");
    return told.isPresent() ? told.get().number() : 1.0;
  }
}
