package org.airfit.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Objects;
import java.util.Set;
import org.airfit.plug.ReferenceSet;

/**
 * The files a program reads, remembered, so that none of them is written over: the job, its catalogue, the catalogue's
 * set.
 *
 * <p>Not thread-safe: one program, one run.
 */
public final class InputFiles {

  private final Set<Path> read = new LinkedHashSet<>();

  /** Starts with no file read. */
  public InputFiles() {}

  /**
   * Reads a job and the files it names.
   *
   * @param path the job file
   * @return the job
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public Job job(Path path) throws WrongFileException {
    return JobFile.read(Disk.open(path, "a JSON file", read::add));
  }

  /**
   * Reads a catalogue and, if it names one, its set file.
   *
   * @param path the catalogue file
   * @return the catalogue
   * @throws WrongFileException if a file is not there, or something in it is refused
   */
  public ShopCatalogue catalogue(Path path) throws WrongFileException {
    return CatalogueFile.read(Disk.open(path, "a JSON file", read::add));
  }

  /**
   * Reads a network.
   *
   * @param path the network file, a table whatever its name ends in
   * @return the network
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public NetworkJob network(Path path) throws WrongFileException {
    return NetworkFile.read(Disk.openTable(path, "a network file, .csv", read::add));
  }

  /**
   * Reads a reference set.
   *
   * @param path the set file
   * @return the set
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public ReferenceSet referenceSet(Path path) throws WrongFileException {
    return measuredSet(path).set();
  }

  /**
   * Reads a reference set with the readings of its pieces.
   *
   * @param path the set file
   * @return the set and the readings
   * @throws WrongFileException if the file is not there, or something in it is refused
   */
  public MeasuredSet measuredSet(Path path) throws WrongFileException {
    return ReferenceSetFile.readMeasured(
        Disk.open(path, "a set file, .csv or .json", read::add));
  }

  /**
   * Refuses a file to write that is one of those read, under whatever name: by another path, a link, or other capitals
   * where the folder does not tell them apart.
   *
   * @param output the file that is to be written
   * @throws WrongFileException if it is one of those read
   */
  public void requireOther(Path output) throws WrongFileException {
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
}
