package org.airfit.files.json;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.files.Disk;
import org.airfit.files.Job;
import org.airfit.files.NetworkJob;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;

/** Answers to the jobs and networks of the examples, and every value that stands in them. */
final class Answers {

  private static final Path EXAMPLES = Path.of("..");

  private Answers() {}

  static List<Path> jobs() throws IOException {
    try (Stream<Path> files = Files.walk(EXAMPLES.resolve("jobs"))) {
      return files
          .filter(file -> file.toString().endsWith(".json"))
          .filter(file -> !file.toString().contains("catalogue"))
          .filter(file -> !file.endsWith("letterhead.json"))
          .sorted()
          .toList();
    }
  }

  static List<Path> networks() throws IOException {
    try (Stream<Path> files = Files.list(EXAMPLES.resolve("networks"))) {
      return files.filter(file -> file.toString().endsWith(".csv")).sorted().toList();
    }
  }

  private static Map<Path, Map<String, Object>> all = Map.of();

  /** What airfit answers to all jobs, asked once: it takes its time. */
  static synchronized Map<Path, Map<String, Object>> toAll() throws Exception {
    if (all.isEmpty()) {
      Map<Path, Map<String, Object>> asked = new LinkedHashMap<>();
      for (Path job : jobs()) {
        asked.put(job, to(job));
      }
      for (Path network : networks()) {
        NetworkJob job = Disk.network(network);
        asked.put(
            network, Map.of("networkJob", job, "networkResult", job.network().solve()));
      }
      all = asked;
    }
    return all;
  }

  /** What airfit answers to a job, by what it is. */
  private static Map<String, Object> to(Path file) throws Exception {
    Map<String, Object> answers = new LinkedHashMap<>();
    Job job = Disk.job(file);
    answers.put("job", job);
    job.plug().ifPresent(plug -> answers.put("identification", plug));
    job.now().ifPresent(now -> answers.put("now", now.result()));
    Requirement asked = job.requirement();
    Selection selection = Selection.of(asked, job.catalogue().parts());
    answers.put("selection", selection);
    if (selection instanceof Selection.Proposals proposals) {
      answers.put("bill", BillOfMaterials.of(proposals.best(), job.catalogue().parts()));
    }
    return answers;
  }

  /** Every value that stands in another, by the methods that are written. */
  static Set<Object> in(Object root) {
    Set<Object> found = Collections.newSetFromMap(new IdentityHashMap<>());
    List<Object> open = new ArrayList<>(List.of(root));
    while (!open.isEmpty()) {
      Object value = open.remove(open.size() - 1);
      if (value instanceof Optional<?> maybe) {
        maybe.ifPresent(open::add);
      } else if (value instanceof Collection<?> items) {
        open.addAll(items);
      } else if (value instanceof Map<?, ?> map) {
        open.addAll(map.keySet());
        open.addAll(map.values());
      } else if (value.getClass().getName().startsWith("org.airfit.") && found.add(value)) {
        if (!Words.isWord(value.getClass())) {
          Fields.ofValue(value.getClass()).stream()
              .filter(field -> !Fields.isWorking(field))
              .forEach(field -> field
                  .of(value)
                  .filter(told ->
                      !(told instanceof List<?> list && list.size() == 1 && list.get(0) == value))
                  .ifPresent(open::add));
        }
      }
    }
    return found;
  }
}
