package org.airfit.fleet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.files.Connected;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.Refusal;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.plug.DemoProfiles;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.select.Catalogue;
import org.airfit.select.Requirement;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * Judges drops one after another. There is one for each partition: places, tools and items that recur are read by the
 * reader of job files once, and kept by their texts. Not thread-safe.
 */
final class DropJudge {

  /** So many places, tools and items are kept, each; then it begins anew. Our own choice: some 40 MB. */
  private static final int MOST_KEPT = 20_000;

  private static final String FILE = "row";
  private static final String MEDIUM = "conditions.medium";

  private final ShopCatalogue catalogue;
  private final UnitSystem units;
  private final Kept<Optional<Place>> places = new Kept<>(this::readPlace);
  private final Kept<Optional<Tool>> tools = new Kept<>(this::readTool);
  private final Kept<Item> items = new Kept<>(this::readItem);

  private DropJudge(ShopCatalogue catalogue, UnitSystem units) {
    this.catalogue = catalogue;
    this.units = units;
  }

  /** One for drops that name no parts of a catalogue, and what to tell sizes and remarks in. */
  static DropJudge in(UnitSystem units) {
    return new DropJudge(noCatalogue(), units);
  }

  static ShopCatalogue noCatalogue() {
    return new ShopCatalogue("none", DemoProfiles.birds(), Catalogue.of(List.of()), List.of());
  }

  /** Where a drop is: a job with its supply, and the run to the outlet. */
  private record Place(Job job, Run toOutlet) {}

  /** What a drop feeds: a job with its tool, and what every row with it asks. */
  private record Tool(Job job, MassFlow takes, GaugePressure least, boolean isExact) {}

  /** Reads what is packed. */
  private interface Reader<T> {
    T read(String packed) throws PackedFields.UnreadableException;
  }

  /** What was read, by its text. Rows that lie together often have the same place and tool as the row before. */
  private static final class Kept<T> {
    private final Reader<T> reader;
    private final Map<String, T> all = new HashMap<>();
    private String last = "";
    private @Nullable T ofLast;

    Kept(Reader<T> reader) {
      this.reader = reader;
    }

    T of(String packed) throws PackedFields.UnreadableException {
      T known = ofLast;
      if (known == null || !packed.equals(last)) {
        known = all.get(packed);
        if (known == null) {
          known = reader.read(packed);
          if (all.size() >= MOST_KEPT) {
            all.clear();
          }
          all.put(packed, known);
        }
        last = packed;
        ofLast = known;
      }
      return known;
    }
  }

  /** One thing of what is connected; or why it is refused, its field as the item calls it. */
  private record Item(@Nullable Connected told, @Nullable Refused refused) {}

  /** A row is refused. It is thrown and caught here alone, and needs no trace. */
  private static final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient Refused refused;

    RefusedException(Refused refused) {
      super(refused.reason(), null, false, false);
      this.refused = refused;
    }
  }

  /**
   * Judges a drop.
   *
   * @param <R> what is made of the answer
   * @param row its fields
   * @param judged what to make of the answer
   * @param refused what to make of a row that is refused
   */
  <R> R judge(
      DropFields.Packed row,
      Function<? super JudgedDrop, ? extends R> judged,
      Function<? super Refused, ? extends R> refused) {
    try {
      return judged.apply(drop(row));
    } catch (RefusedException e) {
      return refused.apply(e.refused);
    } catch (PackedFields.UnreadableException e) {
      return refused.apply(
          new Refused("", "", "holds a control sign in one of its fields; take it out"));
    } catch (RuntimeException e) { // whatever a row holds, the others are judged
      return refused.apply(new Refused("", "", "could not be judged: " + e));
    }
  }

  private JudgedDrop drop(DropFields.Packed row)
      throws RefusedException, PackedFields.UnreadableException {
    Optional<Place> known = places.of(row.place());
    Optional<Tool> read = known.isEmpty() ? Optional.empty() : tools.of(row.tool());
    if (read.isEmpty()) {
      throw new RefusedException(complaint(row));
    }
    Place place = known.get();
    Tool tool = read.get();
    Run run = place.toOutlet();
    boolean isExact = tool.isExact();
    Optional<GaugePressure> set = Optional.empty();
    List<Connected> connected = new ArrayList<>();
    for (int i = 0; i < row.now().size(); i++) {
      if (PackedFields.isBlank(row.now().get(i))) {
        continue;
      }
      Item item = items.of(row.now().get(i));
      if (item.told() == null) {
        throw refused(i, Objects.requireNonNull(item.refused()));
      }
      Connected next = item.told();
      try {
        run = next.addTo(run);
      } catch (IllegalArgumentException e) {
        throw refused(i, new Refused("", "", String.valueOf(e.getMessage())));
      }
      isExact &= next.isExact();
      if (next.set().isPresent()) {
        set = next.set().map(Range::most); // the highest that it may hold, for the tool's limit
      }
      connected.add(next);
    }
    if (connected.isEmpty()) {
      throw new RefusedException(new Refused(
          DropFields.NOW,
          "",
          "tells nothing that is connected; accepted: one item or more, a hose with name, bore,"
              + " length and wall, or a part with name and capacity"));
    }
    RunResult result = run.at(tool.takes());
    return new JudgedDrop(
        place.job(),
        tool.job(),
        run,
        set,
        Connected.notKnown(DropFields.NOW, connected, tool.takes()),
        result,
        DropVerdict.of(result, tool.least(), isExact));
  }

  /** What the place tells; empty where that is refused. */
  private Optional<Place> readPlace(String packed) throws PackedFields.UnreadableException {
    return read(DropFields.ofPlace(packed, units))
        .map(job -> new Place(job, job.requirement().toOutlet()));
  }

  /** What is told of the tool; empty where that is refused. */
  private Optional<Tool> readTool(String packed) throws PackedFields.UnreadableException {
    return read(DropFields.ofTool(packed, units)).map(job -> {
      Requirement asked = job.requirement();
      return new Tool(job, asked.demand().massFlow(), asked.least(), asked.isExact());
    });
  }

  private Optional<Job> read(Map<String, Object> fields) {
    Document document = Document.of(FILE, fields);
    try {
      return Refusal.of(document).isPresent()
          ? Optional.empty()
          : Optional.of(JobFile.read(document, catalogue));
    } catch (WrongFileException e) {
      return Optional.empty();
    }
  }

  /** Why a row is refused, read as one job so that its first fault is told. */
  private Refused complaint(DropFields.Packed row) throws PackedFields.UnreadableException {
    Map<String, Object> fields =
        DropFields.job(new DropFields.Packed(row.place(), row.tool(), List.of()), units);
    Document document = Document.of(FILE, fields);
    Optional<Refusal> medium = Refusal.of(document);
    if (medium.isPresent()) {
      return new Refused(MEDIUM, DropFields.text(row, MEDIUM), medium.get().reason());
    }
    try {
      JobFile.read(document, catalogue);
    } catch (WrongFileException e) {
      return new Refused(e.place(), DropFields.text(row, e.place()), e.complaint());
    }
    throw new IllegalStateException("place and tool are refused alone and taken together");
  }

  private Item readItem(String packed) throws PackedFields.UnreadableException {
    try {
      Document document = Document.of(FILE, DropFields.ITEM.unpack(packed));
      return new Item(Connected.read(document, catalogue), null);
    } catch (WrongFileException e) {
      return new Item(
          null, new Refused(e.place(), DropFields.ITEM.text(packed, e.place()), e.complaint()));
    }
  }

  /** The field of an item as the columns of the row call it. */
  private static RefusedException refused(int item, Refused refused) {
    String place = DropFields.NOW + "[" + (item + 1) + "]";
    return new RefusedException(new Refused(
        refused.field().isEmpty() ? place : place + "." + refused.field(),
        refused.value(),
        refused.reason()));
  }
}
