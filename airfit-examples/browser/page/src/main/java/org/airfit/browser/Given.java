package org.airfit.browser;

import java.util.Locale;
import java.util.Map;
import org.airfit.files.Csv;
import org.airfit.files.Document;
import org.airfit.files.WrongFileException;

/** The files that a page was given, by name; a page knows of no folders, so the last part of a path decides. */
final class Given implements Document.Shelf {

  /** Reads JSON text as plain values. */
  interface JsonReader {

    Object read(String file, String text) throws WrongFileException;
  }

  private final Map<String, String> texts;
  private final JsonReader json;

  /** Takes files by name, and what reads those whose name does not end in .csv. */
  Given(Map<String, String> texts, JsonReader json) {
    this.texts = Map.copyOf(texts);
    this.json = json;
  }

  @Override
  public Document open(String path) throws WrongFileException {
    String name = path.substring(path.lastIndexOf('/') + 1);
    String text = texts.get(name);
    if (text == null) {
      throw new WrongFileException(name, "", "is not here yet; open that file too");
    }
    return new Document(
        name,
        name.toLowerCase(Locale.ROOT).endsWith(".csv")
            ? Csv.read(name, text)
            : json.read(name, text),
        this);
  }
}
