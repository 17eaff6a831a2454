package org.airfit.fleet;

import java.io.ByteArrayOutputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.Optional;
import java.util.UUID;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.CreateFlag;
import org.apache.hadoop.fs.FSDataInputStream;
import org.apache.hadoop.fs.FileContext;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.Options;
import org.apache.hadoop.fs.Path;

/**
 * A folder that is there whole or not at all. All is written into a folder beside it, which takes its name in one step
 * when it is complete. What a killed run left beside it is taken away by the next.
 */
final class WholeOutput {

  /** What the folder holds, and what was asked: written last. */
  private static final String COMPLETE = "complete.txt";

  private final FileContext files;
  private final Path target;
  private final Path begun;
  private final String asked;

  private WholeOutput(FileContext files, Path target, Path begun, String asked) {
    this.files = files;
    this.target = target;
    this.begun = begun;
    this.asked = asked;
  }

  /**
   * Begins an output, or finds that it is there.
   *
   * @param conf where files lie
   * @param folder the folder to come
   * @param asked what is asked, such that an equal text asks for the same output
   * @return the output; empty where it is complete already
   * @throws WrongTableException if the folder is there and holds something else
   */
  static Optional<WholeOutput> begin(Configuration conf, String folder, String asked)
      throws IOException, WrongTableException {
    Path named = new Path(folder);
    FileContext files = FileContext.getFileContext(named.toUri(), conf);
    Path target = files.makeQualified(named);
    if (files.util().exists(target)) {
      if (told(files, new Path(target, COMPLETE)).startsWith(asked)) {
        return Optional.empty();
      }
      throw new WrongTableException(
          folder + " is there and holds something else; name a folder that is not there");
    }
    Path around = target.getParent();
    files.mkdir(around, org.apache.hadoop.fs.permission.FsPermission.getDirDefault(), true);
    String begun = "." + target.getName() + ".begun-";
    FileStatus[] left = files.util().globStatus(new Path(around, begun + "*"));
    for (FileStatus each : left == null ? new FileStatus[0] : left) {
      files.delete(each.getPath(), true);
    }
    Path own = new Path(around, begun + UUID.randomUUID());
    files.mkdir(own, org.apache.hadoop.fs.permission.FsPermission.getDirDefault(), true);
    return Optional.of(new WholeOutput(files, target, own, asked));
  }

  private static String told(FileContext files, Path file) throws IOException {
    try (FSDataInputStream in = files.open(file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (FileNotFoundException e) {
      return "";
    }
  }

  /** Where something of it is written. */
  String place(String name) {
    return new Path(begun, name).toString();
  }

  /** Writes a text file into it. */
  void write(String name, String text) throws IOException {
    try (OutputStream out = stream(name)) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
  }

  /** Opens a file in it. */
  OutputStream stream(String name) throws IOException {
    return files.create(
        new Path(begun, name),
        EnumSet.of(CreateFlag.CREATE, CreateFlag.OVERWRITE),
        Options.CreateOpts.createParent());
  }

  /** Gives it its name, all at once. */
  void complete(String counts) throws IOException {
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    text.writeBytes((asked + counts).getBytes(StandardCharsets.UTF_8));
    try (OutputStream out = stream(COMPLETE)) {
      text.writeTo(out);
    }
    files.rename(begun, target, Options.Rename.NONE);
  }

  /** Takes away what was begun. */
  void abandon() throws IOException {
    files.delete(begun, true);
  }
}
