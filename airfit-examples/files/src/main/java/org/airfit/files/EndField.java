package org.airfit.files;

import java.util.List;
import java.util.function.Function;
import org.airfit.joint.End;

/** Reads how a part ends, and keeps what its writer ought to know because it may be meant otherwise. */
final class EndField {

  private EndField() {}

  /** The end that a field names; what {@link End#remarkOn} says of it joins the remarks, with its place. */
  static End in(Field field, List<String> remarks) throws WrongFileException {
    return in(field, End::parse, remarks);
  }

  /** The same, read by somebody who may have read the same text before. */
  static End in(Field field, Function<String, End> parser, List<String> remarks)
      throws WrongFileException {
    End end = field.typed(parser); // 1-2 NPT is no range, but 1/2 or a count of threads misread
    String typed = field.text();
    End.remarkOn(typed)
        .ifPresent(remark -> remarks.add(
            "\"" + Printable.line(typed.strip()) + "\" in " + field.place() + ": " + remark + "."));
    return end;
  }
}
