package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.jobsheet.JointAnswer;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;

/** Whether two ends go together, and what goes between them. */
final class WillItGoCall {

  private static final String END =
      "a text such as \"3/8 NPT male\", \"G 1/2 female\" or \"3/8 in barb\"";

  private WillItGoCall() {}

  static Map<String, Object> answer(Asked asked) throws RefusedException {
    String one = end(asked, "one");
    String other = end(asked, "other");
    asked.requireNothingElse();
    JointAnswer joint = JointAnswer.of(one, other);
    Mating mating = joint.mating();
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("kind", Shown.kind(mating.verdict()));
    answer.put("sound", mating.verdict().isSound());
    answer.put("joined", Shown.kind(joint.chain().verdict()));
    answer.put("sentence", mating.inWords());
    answer.put("remarks", joint.remarks());
    List<Object> between = new ArrayList<>();
    joint.chain().adapters().forEach(adapter -> between.add(adapter.toString()));
    answer.put("between", between);
    List<Object> joints = new ArrayList<>();
    Set<Object> sources = new LinkedHashSet<>();
    sources.add(mating.source().toString());
    for (Mating each : joint.chain().matings()) {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("sentence", each.inWords());
      each.seal().ifPresent(seal -> told.put("sealing", "Kept tight by " + seal.label() + "."));
      joints.add(told);
      sources.add(each.source().toString());
    }
    answer.put("joints", joints);
    answer.put("toAsk", joint.toAsk());
    answer.put("toBuy", joint.isJoined() ? joint.toBuy() : "");
    answer.put("assembly", joint.chain().assembly().orElse(""));
    List<Caution> cautions = new ArrayList<>(joint.cautions());
    cautions.add(SafetyRules.usFederal().deference());
    answer.put("cautions", Shown.cautions(cautions));
    answer.put("sources", List.copyOf(sources));
    return answer;
  }

  private static String end(Asked asked, String field) throws RefusedException {
    String text = asked.text(field, END);
    try {
      End.parse(text);
      return text;
    } catch (QuantityFormatException e) {
      String message = String.valueOf(e.getMessage());
      String tail = "; accepted: " + e.accepted();
      throw RefusedException.field(
          field,
          message.endsWith(tail) ? message.substring(0, message.length() - tail.length()) : message,
          e.accepted());
    }
  }
}
