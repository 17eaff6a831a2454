package org.airfit.calls;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.files.CatalogueFile;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.Csv;
import org.airfit.files.Document;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.jspecify.annotations.Nullable;

/** The files that a page was given, by name; a page knows of no folders, so the last part of a path decides. */
final class Given implements CatalogueShelf {

  /** So long may a text be [letters]; our own choice, as a page holds it in memory several times. */
  static final int MOST_LETTERS = 10 << 20;

  /** So many parts may a catalogue have; our own choice. */
  static final int MOST_PARTS = 100_000;

  private static final String PARTS = "parts";

  /** A catalogue and the files it was read from. */
  private record ReadCatalogue(String path, Map<String, Object> opened, ShopCatalogue catalogue) {

    boolean isOf(Map<String, Object> contents) {
      return opened.entrySet().stream()
          .allMatch(each ->
              each.getValue() instanceof String text && text.equals(contents.get(each.getKey())));
    }
  }

  private static volatile @Nullable ReadCatalogue last;

  private final Map<String, Object> contents;
  private final Optional<CatalogueShelf> house;

  private Given(Map<String, Object> contents, Optional<CatalogueShelf> house) {
    this.contents = contents;
    this.house = house;
  }

  /** Takes texts of files by name. */
  static Given files(Map<String, ?> texts) throws RefusedException {
    Map<String, Object> contents = new LinkedHashMap<>();
    for (Map.Entry<String, ?> each : texts.entrySet()) {
      if (!(each.getValue() instanceof String)) {
        throw RefusedException.field("files." + each.getKey(), "is no text", "the text of a file");
      }
      contents.put(nameOf(each.getKey()), each.getValue());
    }
    return new Given(contents, Optional.empty());
  }

  /** The same files and one more: its text, or plain values. */
  Given with(String name, Object content) {
    Map<String, Object> more = new LinkedHashMap<>(contents);
    more.put(nameOf(name), content);
    return new Given(more, house);
  }

  /** The same files; one that is not among them is asked for there. */
  Given over(Optional<CatalogueShelf> other) {
    return new Given(contents, other);
  }

  /** Whether there is such a file. */
  boolean has(String path) {
    return contents.containsKey(nameOf(path));
  }

  private static String nameOf(String path) {
    return path.substring(path.lastIndexOf('/') + 1);
  }

  @Override
  public Document open(String path) throws WrongFileException {
    String name = nameOf(path);
    Object content = contents.get(name);
    if (content == null && house.isPresent()) {
      return house.get().open(path);
    }
    if (content == null) {
      throw new WrongFileException(name, "", "is not here yet; open that file too");
    }
    Object values = content instanceof String text
        ? read(name, text, name.toLowerCase(Locale.ROOT).endsWith(".csv"))
        : content;
    refuseTooMany(name, values);
    return new Document(name, values, this);
  }

  /**
   * Of the very texts that were read last, what was read then: most that is typed changes the job and not the stock.
   */
  @Override
  public ShopCatalogue catalogue(String path) throws WrongFileException {
    if (!has(path) && house.isPresent()) {
      return house.get().catalogue(path);
    }
    ReadCatalogue before = last;
    if (before != null && before.path.equals(path) && before.isOf(contents)) {
      return before.catalogue;
    }
    Map<String, Object> opened = new LinkedHashMap<>();
    Document.Shelf noting = new Document.Shelf() {
      @Override
      public Document open(String other) throws WrongFileException {
        Document document = Given.this.open(other);
        opened.put(document.name(), Objects.requireNonNull(contents.get(document.name())));
        return new Document(document.name(), document.content(), this);
      }
    };
    ShopCatalogue catalogue = CatalogueFile.read(noting.open(path));
    last = new ReadCatalogue(path, Map.copyOf(opened), catalogue);
    return catalogue;
  }

  /** Whether a text is JSON and no table, by how it begins. */
  static boolean isJson(String text) {
    return text.stripLeading().startsWith("{") || text.startsWith("\ufeff{");
  }

  /** Reads a text as a table, or as JSON. */
  static Object read(String name, String text, boolean isTable) throws WrongFileException {
    if (text.length() > MOST_LETTERS) {
      throw new WrongFileException(
          name, "", "is larger than 10 MB; give a smaller file, such as the parts you sell most");
    }
    return isTable ? Csv.read(name, text) : JsonText.read(name, text);
  }

  private static void refuseTooMany(String name, Object values) throws WrongFileException {
    if (values instanceof Map<?, ?> map
        && map.get(PARTS) instanceof List<?> parts
        && parts.size() > MOST_PARTS) {
      throw new WrongFileException(
          name,
          PARTS,
          "holds " + parts.size() + " parts; " + MOST_PARTS + " are the most that a page takes");
    }
  }
}
