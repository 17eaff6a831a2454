package org.airfit.fleet;

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
  private final Map<String, Optional<Job>> places = new HashMap<>();
  private final Map<String, Optional<Job>> tools = new HashMap<>();
  private final Map<String, Item> items = new HashMap<>();

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
    Optional<Job> place = place(row.place());
    Optional<Job> tool = place.isEmpty() ? Optional.empty() : tool(row.tool());
    if (tool.isEmpty()) {
      throw new RefusedException(complaint(row));
    }
    Requirement supplied = place.get().requirement();
    Requirement asked = tool.get().requirement();
    Run run = supplied.toOutlet();
    boolean isExact = asked.isExact();
    Optional<GaugePressure> set = Optional.empty();
    int count = 0;
    for (int i = 0; i < row.now().size(); i++) {
      if (PackedFields.isBlank(row.now().get(i))) {
        continue;
      }
      Item item = item(row.now().get(i));
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
      set = next.set().isPresent() ? next.set() : set;
      count++;
    }
    if (count == 0) {
      throw new RefusedException(new Refused(
          DropFields.NOW,
          "",
          "tells nothing that is connected; accepted: one item or more, a hose with name, bore,"
              + " length and wall, or a part with name and capacity"));
    }
    RunResult result = run.at(asked.demand());
    return new JudgedDrop(
        place.get(), tool.get(), run, set, result, DropVerdict.of(result, asked.least(), isExact));
  }

  /** A job with what the place tells; empty where that is refused. */
  private Optional<Job> place(String packed) throws PackedFields.UnreadableException {
    Optional<Job> known = places.get(packed);
    if (known == null) {
      known = read(DropFields.ofPlace(packed, units));
      keep(places, packed, known);
    }
    return known;
  }

  /** A job with the tool; empty where that is refused. */
  private Optional<Job> tool(String packed) throws PackedFields.UnreadableException {
    Optional<Job> known = tools.get(packed);
    if (known == null) {
      known = read(DropFields.ofTool(packed, units));
      keep(tools, packed, known);
    }
    return known;
  }

  private static <T> void keep(Map<String, T> kept, String packed, T value) {
    if (kept.size() >= MOST_KEPT) {
      kept.clear();
    }
    kept.put(packed, value);
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

  private Item item(String packed) throws PackedFields.UnreadableException {
    Item known = items.get(packed);
    if (known == null) {
      known = readItem(packed);
      keep(items, packed, known);
    }
    return known;
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
