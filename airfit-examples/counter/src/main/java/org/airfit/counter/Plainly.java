package org.airfit.counter;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.files.Refusal;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.jspecify.annotations.Nullable;

/** What answers are made of, as plain values. */
final class Plainly {

  private static final String PICTURE = "picture";
  private static final String RULES = "rules";

  /** Outcomes of rules that nobody needs to act on. */
  private static final Set<String> SETTLED = Set.of("met", "doesNotApply");

  private Plainly() {}

  static List<Object> cautions(Collection<Caution> cautions) {
    List<Object> told = new ArrayList<>();
    for (Caution caution : cautions) {
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("title", caution.title());
      one.put("text", caution.text());
      one.put("source", caution.source().toString());
      told.add(one);
    }
    return told;
  }

  /** What whoever asked must be told with a refusal, and that it is no approval of anything else. */
  static List<Object> cautionsOf(Refusal refusal) {
    return cautions(List.of(refusal.caution(), SafetyRules.usFederal().deference()));
  }

  /** An answer without its drawings and without the rules that are met or do not apply; cautions stay. */
  static Map<String, Object> forTill(Map<?, ?> answer) {
    Map<String, Object> kept = new LinkedHashMap<>();
    answer.forEach((name, value) -> {
      if (!PICTURE.equals(name)) {
        kept.put(
            String.valueOf(name),
            RULES.equals(name) && value instanceof List<?> rules ? unsettled(rules) : kept(value));
      }
    });
    return kept;
  }

  private static List<Object> unsettled(List<?> rules) {
    List<Object> open = new ArrayList<>();
    for (Object rule : rules) {
      if (!(rule instanceof Map<?, ?> fields) || !SETTLED.contains(fields.get("outcome"))) {
        open.add(rule);
      }
    }
    return open;
  }

  private static @Nullable Object kept(@Nullable Object value) {
    if (value instanceof Map<?, ?> map) {
      return forTill(map);
    }
    if (value instanceof List<?> list) {
      List<@Nullable Object> items = new ArrayList<>();
      list.forEach(each -> items.add(kept(each)));
      return items;
    }
    return value;
  }
}
