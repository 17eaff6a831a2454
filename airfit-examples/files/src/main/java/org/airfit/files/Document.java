package org.airfit.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A file as plain values, whatever library read it: what its meaning is checked on.
 *
 * <p>A JSON file is a {@link Map} of {@link String} to values; a value is a map again, a {@link List} of values, a
 * {@link String}, a {@link Number}, a {@link Boolean} or null. A table is a list of rows, the heading first, and each
 * row a list of texts.
 *
 * @param name the name of the file, for complaints
 * @param content the plain values
 * @param shelf where the files stand that this one names
 */
public record Document(String name, Object content, Shelf shelf) {

  /** A place with files that other files name: a folder on disk, or what a web page was given. */
  public interface Shelf {

    /**
     * Opens a file.
     *
     * @param path the path that stands in another file
     * @return the file
     * @throws WrongFileException if there is no such file, or it cannot be read
     */
    Document open(String path) throws WrongFileException;
  }

  /**
   * Refuses what is null.
   *
   * @param name the name of the file, for complaints
   * @param content the plain values
   * @param shelf where the files stand that this one names
   */
  public Document {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(content, "content");
    Objects.requireNonNull(shelf, "shelf");
  }

  /**
   * Copies the fields of an object of plain values.
   *
   * @param content plain values
   * @return the fields in their order, without those that are null; none of what is no object
   */
  public static Map<String, Object> fields(Object content) {
    Objects.requireNonNull(content, "content");
    Map<String, Object> fields = new LinkedHashMap<>();
    if (content instanceof Map<?, ?> object) {
      object.forEach((name, value) -> {
        if (value != null) {
          fields.put(String.valueOf(name), value);
        }
      });
    }
    return fields;
  }

  /**
   * Obtains a file that stands alone: it is refused if it names another one.
   *
   * @param name the name of the file, for complaints
   * @param content the plain values
   * @return the file
   */
  public static Document of(String name, Object content) {
    return new Document(name, content, path -> {
      throw new WrongFileException(
          name, "", "names the file \"" + path + "\", but no other file was given");
    });
  }
}
