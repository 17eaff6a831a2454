package org.airfit.files;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.airfit.plug.ReferenceSet;

/**
 * Files on disk: a name that ends in .csv is a table, any other JSON; what one file names is looked for beside it.
 *
 * <p>The only class that knows of folders.
 */
public final class Disk {

  private Disk() {}

  /**
   * Reads a job and the catalogue it names.
   *
   * @param path the job file
   * @return the job
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static Job job(Path path) throws WrongFileException {
    return JobFile.read(open(path, "a JSON file"));
  }

  /**
   * Looks whether a job is for anything but compressed air, before anything else of it is read.
   *
   * @param path the job file
   * @return the refusal; empty for compressed air
   * @throws WrongFileException if the file is not there or is no JSON
   */
  public static Optional<Refusal> refusal(Path path) throws WrongFileException {
    return Refusal.of(open(path, "a JSON file"));
  }

  /**
   * Reads a catalogue and, if it names one, its set file.
   *
   * @param path the catalogue file
   * @return the catalogue
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static ShopCatalogue catalogue(Path path) throws WrongFileException {
    return CatalogueFile.read(open(path, "a JSON file"));
  }

  /**
   * Reads a network.
   *
   * @param path the network file, a table whatever its name ends in
   * @return the network
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public static NetworkJob network(Path path) throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    String text = text(path, "a network file, .csv");
    return NetworkFile.read(Document.of(file, Csv.read(file, text)));
  }

  /**
   * Reads a reference set.
   *
   * @param path the set file
   * @return the set
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public static ReferenceSet referenceSet(Path path) throws WrongFileException {
    return ReferenceSetFile.read(open(path, "a set file, .csv or .json"));
  }

  /**
   * Writes a reference set, whole or not at all.
   *
   * @param path the set file
   * @param set the set
   * @throws WrongFileException if the file cannot be written, or would not read back as the very same set
   */
  public static void write(Path path, ReferenceSet set) throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    Map<String, Object> object = ReferenceSetFile.toObject(set);
    String text = isTable(file) ? Csv.write(ReferenceSetFile.toRows(set)) : Json.write(object);
    ReferenceSet again = ReferenceSetFile.read(document(path, text));
    if (!ReferenceSetFile.toObject(again).equals(object)) {
      throw new WrongFileException(
          file, "", "would not read back as the same set; look for odd spaces in its names");
    }
    write(path, text);
  }

  /**
   * Writes a text, whole or not at all: beside its place first, then moved there.
   *
   * @param path the file, in a folder that is there
   * @param text the text
   * @throws WrongFileException if the file cannot be written
   */
  public static void write(Path path, String text) throws WrongFileException {
    Path folder = path.toAbsolutePath().getParent();
    try {
      Path draft = Files.createTempFile(folder, "page", ".part");
      try {
        Files.writeString(draft, text);
        Files.move(draft, path, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(draft);
      }
    } catch (IOException e) {
      throw new WrongFileException(
          path.toString(), "", "can't be written; give a file in a folder that is there and yours");
    }
  }

  private static Document open(Path path, String kind) throws WrongFileException {
    return document(path, text(path, kind));
  }

  private static Document document(Path path, String text) throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    return new Document(
        file,
        isTable(file) ? Csv.read(file, text) : Json.read(file, text),
        name -> open(beside(path, name), "a file that is there"));
  }

  private static Path beside(Path path, String name) throws WrongFileException {
    try {
      return path.resolveSibling(name);
    } catch (InvalidPathException e) {
      throw new WrongFileException(
          String.valueOf(path.getFileName()),
          "",
          "names the file \"" + name + "\", which is no path");
    }
  }

  private static boolean isTable(String file) {
    return file.toLowerCase(Locale.ROOT).endsWith(".csv");
  }

  private static String text(Path path, String kind) throws WrongFileException {
    try {
      return Files.readString(path);
    } catch (NoSuchFileException e) {
      throw new WrongFileException(
          path.toString(), "", "there is no such file; give the path of " + kind);
    } catch (MalformedInputException e) {
      throw new WrongFileException(
          String.valueOf(path.getFileName()), "", "is not text in UTF-8; save it as UTF-8");
    } catch (IOException e) {
      throw new WrongFileException(
          path.toString(), "", "can't be read (" + e.getClass().getSimpleName() + ")");
    }
  }
}
