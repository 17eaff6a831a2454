package org.airfit.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.select.Accessory;
import org.airfit.select.Catalogue;
import org.airfit.select.Part;

/** What a catalogue file says; docs/job-file.md has the fields. */
public final class CatalogueFile {

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
    return read(root, name, profiles(document, root, name));
  }

  /**
   * Reads a catalogue whose profiles a program has, such as one row of a price list after the other.
   *
   * @param document the fields of a catalogue without {@code profiles} and {@code profileSet}
   * @param set the profiles
   * @return the catalogue
   * @throws WrongFileException if a field is missing, misspelt or refused
   */
  public static ShopCatalogue read(Document document, ReferenceSet set) throws WrongFileException {
    Field root = Field.of(document);
    return read(
        root,
        root.field("catalogue", "the name of the catalogue").text(),
        Objects.requireNonNull(set, "set"));
  }

  private static ShopCatalogue read(Field root, String name, ReferenceSet set)
      throws WrongFileException {
    Optional<Field> currency = root.find("currency");
    Optional<String> money =
        currency.isPresent() ? Optional.of(currency.get().text()) : Optional.empty();
    List<Part> parts = new ArrayList<>();
    List<String> remarks = new ArrayList<>();
    PartFields reader = new PartFields(set, money, remarks);
    Map<String, String> ids = new HashMap<>();
    for (Field item : root.field("parts", "a list of parts").items()) {
      parts.add(named(item, ids, () -> reader.ofCatalogue(item)));
    }
    List<Accessory> accessories = new ArrayList<>();
    Optional<Field> beside = root.find("accessories", "a list such as [{\"kind\": \"drain\", …}]");
    if (beside.isPresent()) {
      for (Field item : beside.get().items()) {
        accessories.add(named(item, ids, () -> AccessoryFields.of(item, reader, set)));
      }
    }
    root.requireNothingElse();
    return new ShopCatalogue(
        name, set, root.build(() -> Catalogue.of(parts, accessories)), remarks);
  }

  /** Reads an article of a list; a complaint about it tells its id too, which is found faster than its number. */
  private static <T> T named(Field item, Map<String, String> ids, Field.Building<T> reading)
      throws WrongFileException {
    T read;
    try {
      read = reading.build();
    } catch (WrongFileException e) {
      throw item.isObject() && item.find("id").filter(Field::isText).isPresent()
          ? new WrongFileException(
              e.file(),
              e.place(),
              e.complaint() + " (id \"" + item.field("id", "").text() + "\")")
          : e;
    }
    Field id = item.field("id", "");
    String before = ids.putIfAbsent(id.text(), item.place());
    if (before != null) {
      throw id.wrong("\"" + id.text() + "\" is the id of " + before
          + " already; ids must differ in a catalogue, give another");
    }
    return read;
  }

  /** {@return the words for the kinds of what stands in the list "parts"} */
  public static List<String> partKinds() {
    return PartFields.kinds();
  }

  /** {@return the words for the kinds of what stands in the list "accessories"} */
  public static List<String> accessoryKinds() {
    return AccessoryFields.KINDS;
  }

  /** The catalogue that another file names. */
  static ShopCatalogue named(String path, Document.Shelf shelf) throws WrongFileException {
    return shelf instanceof CatalogueShelf reading
        ? reading.catalogue(path)
        : read(shelf.open(path));
  }

  /** The profiles of a catalogue whose parts are read one by one. */
  static ReferenceSet profilesOf(Document document, Field root) throws WrongFileException {
    return profiles(
        document, root, root.field("catalogue", "the name of the catalogue").text());
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
}
