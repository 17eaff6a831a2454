package org.airfit.browser.compiler;

import java.util.Set;
import org.teavm.model.BasicBlock;
import org.teavm.model.ClassHolder;
import org.teavm.model.ClassHolderTransformer;
import org.teavm.model.ClassHolderTransformerContext;
import org.teavm.model.Instruction;
import org.teavm.model.MethodHolder;
import org.teavm.model.MethodReference;
import org.teavm.model.Program;
import org.teavm.model.instructions.InvokeInstruction;

/**
 * Leads what airfit calls of {@link Math} to functions of its own, for those of the compiler's class library are rough.
 */
public final class MathCalls implements ClassHolderTransformer {

  private static final String OURS = "org.airfit.";

  private static final String MATHS = "org.airfit.browser.Maths";

  private static final Set<String> ROUGH = Set.of(
      "cbrt", "expm1", "hypot", "log10", "log1p", "rint", "round", "toDegrees", "toRadians", "ulp");

  @Override
  public void transformClass(ClassHolder cls, ClassHolderTransformerContext context) {
    if (!cls.getName().startsWith(OURS) || cls.getName().equals(MATHS)) {
      return;
    }
    for (MethodHolder method : cls.getMethods()) {
      Program program = method.getProgram();
      if (program == null) {
        continue;
      }
      for (BasicBlock block : program.getBasicBlocks()) {
        for (Instruction instruction : block) {
          if (instruction instanceof InvokeInstruction call
              && call.getMethod().getClassName().equals("java.lang.Math")
              && ROUGH.contains(call.getMethod().getName())) {
            call.setMethod(new MethodReference(MATHS, call.getMethod().getDescriptor()));
          }
        }
      }
    }
  }
}
