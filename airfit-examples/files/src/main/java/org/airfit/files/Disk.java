package org.airfit.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import org.airfit.plug.ReferenceSet;

/**
 * Files on disk: a name that ends in .csv is a table, any other JSON; what one file names is looked for beside it.
 *
 * <p>A file is read up to 16 MB, and only an ordinary one: no folder, device or pipe. The only class that knows of
 * folders.
 */
public final class Disk {

  /** No job, catalogue, set or network is larger. */
  private static final int MOST_BYTES = 16 << 20;

  private Disk() {}

  /**
   * Reads a job and the catalogue it names.
   *
   * @param path the job file
   * @return the job
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static Job job(Path path) throws WrongFileException {
    return job(path, new ArrayList<>());
  }

  /**
   * Reads a job and the files it names, and notes every file that is read for it.
   *
   * @param path the file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return the job
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static Job job(Path path, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return JobFile.read(open(path, "a JSON file", read));
  }

  /**
   * Looks whether a job is for anything but compressed air, before anything else of it is read.
   *
   * @param path the job file
   * @return the refusal; empty for compressed air
   * @throws WrongFileException if the file is not there or is no JSON
   */
  public static Optional<Refusal> refusal(Path path) throws WrongFileException {
    return refusal(path, new ArrayList<>());
  }

  /**
   * Looks the same, and notes the file that is read for it.
   *
   * @param path the job file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return the refusal; empty for compressed air
   * @throws WrongFileException if the file is not there or is no JSON
   */
  public static Optional<Refusal> refusal(Path path, Collection<Path> read)
      throws WrongFileException {
    Objects.requireNonNull(read, "read");
    Document job = open(path, "a JSON file", read);
    noteNamed(path, job, read);
    return Refusal.of(job);
  }

  /** Notes the files that a job and its catalogue name, which a refusal does not read. */
  private static void noteNamed(Path path, Document job, Collection<Path> read)
      throws WrongFileException {
    note(path, job, "rules", read);
    Optional<Path> catalogue = note(path, job, "catalogue", read);
    if (catalogue.isPresent() && Files.isRegularFile(catalogue.get())) {
      Document shop;
      try {
        shop = open(catalogue.get(), "a JSON file", new ArrayList<>());
      } catch (WrongFileException e) {
        return; // a refusal needs no catalogue
      }
      note(catalogue.get(), shop, "profileSet", read);
    }
  }

  private static Optional<Path> note(
      Path path, Document document, String field, Collection<Path> read) throws WrongFileException {
    if (document.content() instanceof Map<?, ?> fields
        && fields.get(field) instanceof String name) {
      Path named = beside(path, name);
      read.add(named);
      return Optional.of(named);
    }
    return Optional.empty();
  }

  /**
   * Reads the settings of the shop whose job it is: {@code letterhead.json} in the folder of the job, or if there is none in
   * that of another file that was read for it, such as the catalogue.
   *
   * @param read the files that were read for a job, the job first; takes the settings too
   * @return the settings; empty where no such file is there
   * @throws WrongFileException if something in it is refused
   */
  public static Optional<Shop> shop(Collection<Path> read) throws WrongFileException {
    for (Path file : List.copyOf(read)) {
      Path settings = file.resolveSibling(Shop.FILE);
      if (Files.exists(settings)) {
        return Optional.of(Shop.read(open(settings, "a settings file", read)));
      }
    }
    return Optional.empty();
  }

  /**
   * Reads a catalogue and, if it names one, its set file.
   *
   * @param path the catalogue file
   * @return the catalogue
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static ShopCatalogue catalogue(Path path) throws WrongFileException {
    return CatalogueFile.read(open(path, "a JSON file", new ArrayList<>()));
  }

  /**
   * Reads a network.
   *
   * @param path the network file, a table whatever its name ends in
   * @return the network
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public static NetworkJob network(Path path) throws WrongFileException {
    return network(path, new ArrayList<>());
  }

  /**
   * Reads a network, and notes every file that is read for it.
   *
   * @param path the file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return the network
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static NetworkJob network(Path path, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return NetworkFile.read(openTable(path, "a network file, .csv", read));
  }

  /**
   * Reads a ledger of leaks, and notes every file that is read for it.
   *
   * @param path the file, a table whatever its name ends in
   * @param read takes the files that were read; see {@link #requireOther}
   * @return the ledger
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public static LeakJob leaks(Path path, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return LeakFile.read(openTable(path, "a ledger of leaks, .csv", read));
  }

  /**
   * Reads a run with readings of its gauges, and notes every file that is read for it.
   *
   * @param path the diagnosis file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return the run and the readings
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public static DiagnosisJob diagnosis(Path path, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return DiagnosisFile.read(open(path, "a JSON file", read));
  }

  /**
   * Reads a day of a plant and the recordings it names, and notes every file that is read for it.
   *
   * @param path the day file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return the day
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static DayJob day(Path path, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return DayFile.read(open(path, "a JSON file", read));
  }

  /**
   * Reads an inventory of couplings and the catalogue it names, and notes every file that is read for it.
   *
   * @param path the inventory file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return the inventory
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static InventoryJob inventory(Path path, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return InventoryFile.read(open(path, "a JSON file", read));
  }

  /**
   * Reads what is asked of a price list and the files it names, and notes every file that is read for it.
   *
   * @param path the file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return what is asked, with the articles that could not be read
   * @throws WrongFileException if a file is not there, or something in it is refused, other than in an article
   */
  public static PriceListJob priceList(Path path, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return PriceListFile.read(open(path, "a JSON file", read));
  }

  /**
   * Reads a file of water and purity, and notes every file that is read for it.
   *
   * @param path the file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return what is asked, and the trains of filters and dryers
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public static WaterJob water(Path path, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return WaterFile.read(open(path, "a JSON file", read));
  }

  /**
   * Reads a reference set.
   *
   * @param path the set file
   * @return the set
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public static ReferenceSet referenceSet(Path path) throws WrongFileException {
    return measuredSet(path, new ArrayList<>()).set();
  }

  /**
   * Reads a reference set with the readings of its pieces, and notes every file that is read for it.
   *
   * @param path the file
   * @param read takes the files that were read; see {@link #requireOther}
   * @return the set and the readings
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public static MeasuredSet measuredSet(Path path, Collection<Path> read)
      throws WrongFileException {
    Objects.requireNonNull(read, "read");
    return ReferenceSetFile.readMeasured(open(path, "a set file, .csv or .json", read));
  }

  /**
   * Refuses a file to write that is one of those read, under whatever name: by another path, a link, or other capitals
   * where the folder does not tell them apart.
   *
   * @param output the file that is to be written
   * @param read the files that were read
   * @throws WrongFileException if it is one of them
   */
  public static void requireOther(Path output, Collection<Path> read) throws WrongFileException {
    Objects.requireNonNull(output, "output");
    for (Path input : read) {
      if (isSame(input, output)) {
        throw new WrongFileException(
            output.toString(),
            "",
            "is read for this, and is not written over; give another file to write");
      }
    }
  }

  private static boolean isSame(Path input, Path output) {
    try {
      return Files.isSameFile(input, output);
    } catch (IOException e) { // the output is not there yet
      return input.toAbsolutePath().normalize().equals(output.toAbsolutePath().normalize());
    }
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
    ReferenceSet again = ReferenceSetFile.read(document(path, text, new ArrayList<>()));
    if (!ReferenceSetFile.toObject(again).equals(object)) {
      throw new WrongFileException(
          file, "", "would not read back as the same set; look for odd spaces in its names");
    }
    write(path, text);
  }

  /**
   * Writes a ledger of leaks with what was computed, whole or not at all. No spreadsheet computes a cell of it.
   *
   * @param path the file, a table
   * @param job the ledger
   * @throws WrongFileException if the file cannot be written, or would not read back as the very same ledger
   */
  public static void write(Path path, LeakJob job) throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    String text = Csv.write(LeakFile.toRows(job).stream()
        .map(row -> row.stream().map(Csv::asText).toList())
        .toList());
    LeakJob again = LeakFile.read(Document.of(file, Csv.read(file, text)));
    if (!again.ledger().equals(job.ledger()) || !again.tests().equals(job.tests())) {
      throw new WrongFileException(
          file, "", "would not read back as the same ledger; look for odd signs in its texts");
    }
    write(path, text);
  }

  /**
   * Reads a job from its fields, as if they stood in a file, and writes nothing.
   *
   * @param path where the file would stand; the catalogue is seen from there
   * @param fields the fields, see {@link JobFile#toObject}
   * @param read takes the files that were read for it; see {@link #requireOther}
   * @return the job
   * @throws WrongFileException if something in it is refused
   */
  public static Job job(Path path, Map<String, ?> fields, Collection<Path> read)
      throws WrongFileException {
    Objects.requireNonNull(fields, "fields");
    Objects.requireNonNull(read, "read");
    return JobFile.read(document(path, Json.write(JobFile.toObject(fields)), read));
  }

  /**
   * Reads the fields of a JSON file, whatever they mean.
   *
   * @param path the file
   * @param read takes the file; see {@link #requireOther}
   * @return its fields by name, as {@link Document} tells them
   * @throws WrongFileException if the file is not there, or holds no JSON object
   */
  public static Map<String, Object> fields(Path path, Collection<Path> read)
      throws WrongFileException {
    Objects.requireNonNull(read, "read");
    Document document = open(path, "a JSON file", read);
    Map<String, Object> fields = new LinkedHashMap<>();
    if (!(document.content() instanceof Map<?, ?> object)) {
      throw new WrongFileException(document.name(), "", "holds no JSON object; give a job file");
    }
    object.forEach((name, value) -> fields.put(String.valueOf(name), value));
    return fields;
  }

  /**
   * Writes a job, whole or not at all.
   *
   * @param path the job file; the catalogue that the job names is looked for beside it
   * @param fields the fields of a job as docs/job-file.md lists them, of maps, lists, texts, numbers and truth values
   * @return the job as it is read back
   * @throws WrongFileException if the file cannot be written, or would not read back: it names the field that is
   *     missing or refused
   */
  public static Job writeJob(Path path, Map<String, ?> fields) throws WrongFileException {
    Collection<Path> named = new ArrayList<>();
    Job job = job(path, fields, named);
    String text = Json.write(JobFile.toObject(fields));
    requireOther(path, named);
    write(path, text);
    return job;
  }

  /**
   * Writes a text, whole or not at all: beside its place first, then moved there. A new file gets the rights that new
   * files have here (the umask's), a file that was there keeps its own, and a link stays a link to what it names.
   *
   * @param path the file, in a folder that is there
   * @param text the text
   * @throws WrongFileException if the file cannot be written, or the path is no ordinary file
   */
  public static void write(Path path, String text) throws WrongFileException {
    try {
      Path place = Files.exists(path) ? path.toRealPath() : path.toAbsolutePath();
      if (Files.exists(place, LinkOption.NOFOLLOW_LINKS) && !Files.isRegularFile(place)) {
        throw new WrongFileException(
            path.toString(),
            "",
            "can't be written: it is " + kindOf(place) + "; give a file to write");
      }
      Path folder = place.getParent();
      if (folder == null) {
        throw new WrongFileException(path.toString(), "", "is no file; give a file to write");
      }
      Path draft =
          folder.resolve("airfit-" + Long.toHexString(new SplittableRandom().nextLong()) + ".part");
      try {
        Files.writeString(draft, text, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        if (Files.exists(place)) {
          keepRights(place, draft);
        }
        Files.move(draft, place, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(draft);
      }
    } catch (IOException e) {
      throw new WrongFileException(
          path.toString(), "", "can't be written; give a file in a folder that is there and yours");
    }
  }

  private static void keepRights(Path from, Path to) throws IOException {
    if (!Files.isWritable(from)) {
      throw new IOException("not writable");
    }
    PosixFileAttributeView rights = Files.getFileAttributeView(from, PosixFileAttributeView.class);
    if (rights != null) { // null where files have no such rights
      Files.setPosixFilePermissions(to, rights.readAttributes().permissions());
    }
  }

  private static Document open(Path path, String kind, Collection<Path> read)
      throws WrongFileException {
    return document(path, text(path, kind, read), read);
  }

  /** A table whatever the name ends in, which names no other file. */
  private static Document openTable(Path path, String kind, Collection<Path> read)
      throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    return new Document(
        file,
        Csv.read(file, text(path, kind, read)),
        name -> open(beside(path, name), "a file that is there", read));
  }

  private static Document document(Path path, String text, Collection<Path> read)
      throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    return new Document(
        file,
        isTable(file) ? Csv.read(file, text) : Json.read(file, text),
        name -> open(beside(path, name), "a file that is there", read));
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

  private static String text(Path path, String kind, Collection<Path> read)
      throws WrongFileException {
    try {
      if (Files.exists(path) && !Files.isRegularFile(path)) {
        throw new WrongFileException(
            path.toString(),
            "",
            "can't be read: it is " + kindOf(path) + "; give the path of " + kind);
      }
      byte[] bytes;
      try (InputStream in = Files.newInputStream(path)) {
        bytes = in.readNBytes(MOST_BYTES + 1);
      }
      if (bytes.length > MOST_BYTES) {
        throw new WrongFileException(
            path.toString(), "", "is larger than 16 MB; give the path of " + kind);
      }
      read.add(path);
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (NoSuchFileException e) {
      throw WrongFileException.missing(path.toString(), kind);
    } catch (CharacterCodingException e) {
      throw new WrongFileException(
          String.valueOf(path.getFileName()), "", "is not text in UTF-8; save it as UTF-8");
    } catch (IOException e) {
      throw new WrongFileException(
          path.toString(), "", "can't be read (" + e.getClass().getSimpleName() + ")");
    }
  }

  private static String kindOf(Path path) {
    return Files.isDirectory(path) ? "a folder" : "no ordinary file";
  }
}
