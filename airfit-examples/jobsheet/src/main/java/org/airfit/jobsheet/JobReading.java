package org.airfit.jobsheet;

import java.util.Map;
import org.airfit.files.Job;
import org.airfit.files.WrongFileException;

/** Reads a job from its fields, wherever the files stand that it names. */
@FunctionalInterface
public interface JobReading {

  /**
   * Reads a job.
   *
   * @param fields the fields of a job file, docs/job-file.md
   * @return the job
   * @throws WrongFileException if something in it is refused
   */
  Job job(Map<String, Object> fields) throws WrongFileException;
}
