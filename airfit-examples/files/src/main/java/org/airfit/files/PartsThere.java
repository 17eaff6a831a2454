package org.airfit.files;

import java.util.List;
import java.util.Optional;
import org.airfit.joint.End;
import org.airfit.quantity.Length;
import org.airfit.quantity.NearWord;
import org.airfit.quantity.Range;
import org.airfit.select.Part;

/** The parts that are there and stay, as a job tells them: by the id of a catalogue, or with data of their own. */
final class PartsThere {

  private static final String PART =
      "the id of a part of the catalogue, or an object with its data";

  /** So many ids are listed in a complaint; our own choice. */
  private static final int MOST_LISTED = 20;

  private final ShopCatalogue catalogue;
  private final PartFields reader;

  PartsThere(ShopCatalogue catalogue, List<String> remarks) {
    this.catalogue = catalogue;
    this.reader = new PartFields(catalogue.profiles(), Optional.empty(), remarks);
  }

  /** The part that a field tells; empty where the field is missing, so that one is to be chosen. */
  <T extends Part> Optional<T> find(
      Field item, String field, Class<T> type, String kind, String slot) throws WrongFileException {
    Optional<Field> told = item.find(field, PART);
    if (told.isEmpty()) {
      return Optional.empty();
    }
    if (told.get().isObject()) {
      return Optional.of(type.cast(reader.there(told.get(), kind, slot)));
    }
    return Optional.of(type.cast(existing(ofCatalogue(told.get(), type, kind))));
  }

  /**
   * The hose that a field tells: by an id of the catalogue, with data of its own, or in words such as "1/4 in hose,
   * old, 25 ft"; empty where the field is missing.
   */
  Optional<Part.Hose> hose(Field item, String field, String slot, Optional<Range<Length>> reach)
      throws WrongFileException {
    Optional<Field> told = item.find(field, PART);
    if (told.isPresent() && told.get().isText() && isUnknown(told.get().text())) {
      Optional<Part.Hose> inWords = OldHose.of(told.get(), reach);
      if (inWords.isPresent()) {
        return inWords;
      }
    }
    return find(item, field, Part.Hose.class, PartFields.HOSE, slot);
  }

  private boolean isUnknown(String id) {
    return catalogue.parts().part(id).isEmpty();
  }

  /** A part of the catalogue by its id. */
  <T extends Part> T ofCatalogue(Field field, Class<T> type, String kind)
      throws WrongFileException {
    String id = field.text();
    Optional<Part> part = catalogue.parts().part(id).filter(each -> is(each, type, kind));
    if (part.isEmpty()) {
      List<String> ids = catalogue.parts().parts().stream()
          .filter(each -> is(each, type, kind))
          .map(Part::id)
          .toList();
      throw field.wrong("\"" + id + "\" is no " + kind + " of the catalogue \"" + catalogue.name()
          + "\"" + NearWord.named(id, ids)
          + (ids.isEmpty() ? noneOf(kind) : "; accepted: " + listed(ids))
          + (kind.equals(PartFields.HOSE) ? ", or words such as \"1/4 in hose, old, 25 ft\"" : ""));
    }
    return type.cast(part.get());
  }

  private String noneOf(String kind) {
    int parts = catalogue.parts().parts().size();
    return parts == 0 ? "; it has no parts" : "; none of its " + parts + " parts is a " + kind;
  }

  private static String listed(List<String> ids) {
    return ids.size() <= MOST_LISTED
        ? String.join(", ", ids)
        : String.join(", ", ids.subList(0, MOST_LISTED)) + " and " + (ids.size() - MOST_LISTED)
            + " more";
  }

  private static boolean is(Part part, Class<? extends Part> type, String kind) {
    return type.isInstance(part)
        && !(part instanceof Part.Device device
            && type == Part.Device.class
            && !device.kind().toString().equals(kind))
        && !(part instanceof Part.Regulator regulator
            && type == Part.Regulator.class
            && !regulator.kind().toString().equals(kind));
  }

  /** The ends of piping that is there. */
  List<End> ends(Field item) throws WrongFileException {
    End end = reader.end(item);
    return List.of(end, reader.otherEnd(item, end));
  }

  /** A part as one that the customer has, whatever the catalogue says of it. */
  private static Part existing(Part part) {
    return part.withFacts(part.facts().asExisting());
  }
}
