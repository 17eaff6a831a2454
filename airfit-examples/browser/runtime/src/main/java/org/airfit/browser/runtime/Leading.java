package org.airfit.browser.runtime;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.ServiceLoader;
import java.util.Set;
import org.airfit.browser.runtime.regex.Dialect;
import org.teavm.extension.spi.resources.ResourcesPolicy;
import org.teavm.model.BasicBlock;
import org.teavm.model.ClassHolder;
import org.teavm.model.ClassHolderTransformer;
import org.teavm.model.ClassHolderTransformerContext;
import org.teavm.model.ElementModifier;
import org.teavm.model.Instruction;
import org.teavm.model.MethodDescriptor;
import org.teavm.model.MethodHolder;
import org.teavm.model.MethodReference;
import org.teavm.model.Program;
import org.teavm.model.ValueType;
import org.teavm.model.Variable;
import org.teavm.model.emit.ProgramEmitter;
import org.teavm.model.emit.StringChooseEmitter;
import org.teavm.model.instructions.InvocationType;
import org.teavm.model.instructions.InvokeInstruction;
import org.teavm.model.instructions.StringConstantInstruction;
import org.teavm.vm.spi.TeaVMHost;
import org.teavm.vm.spi.TeaVMPlugin;

/**
 * Leads calls to the functions of this package: those of {@link Math} and of resources that airfit makes, and whatever
 * makes digits of numbers or numbers of digits.
 */
public final class Leading implements TeaVMPlugin, ClassHolderTransformer {

  private static final String OURS = "org.airfit.";

  private static final String HERE = "org.airfit.browser.runtime.";

  private static final String DIGITS = HERE + "Digits";

  private static final String ANALYZER = "org.teavm.classlib.impl.text.DoubleAnalyzer";

  private static final Set<String> ROUGH = Set.of(
      "cbrt", "expm1", "hypot", "log10", "log1p", "rint", "round", "toDegrees", "toRadians", "ulp");

  /** What Character tells of signs; only where a sign alone is given. */
  private static final Set<String> OF_SIGNS = Set.of(
      "getType",
      "isDigit",
      "isLetterOrDigit",
      "isSpaceChar",
      "isWhitespace",
      "toLowerCase",
      "toUpperCase");

  /** Methods of Object and Class whose names of classes nobody reads. */
  private static final Set<String> NAMELESS = Set.of("toString", "cast");

  private static final Set<String> READ_AS_REGEX =
      Set.of("matches", "replaceAll", "replaceFirst", "split");

  private final Map<String, String> tables = new LinkedHashMap<>();

  /** Made by the compiler. */
  public Leading() {}

  @Override
  public void install(TeaVMHost host) {
    for (ResourcesPolicy policy :
        ServiceLoader.load(ResourcesPolicy.class, host.getClassLoader())) {
      for (String path : policy.supplyResources(List.of())) {
        String name = path.substring(path.lastIndexOf('/') + 1);
        String text = text(host, path);
        String before = tables.putIfAbsent(name, text);
        if (before != null && !before.equals(text)) {
          throw new IllegalStateException("two tables must not have one name, were: " + name);
        }
      }
    }
    host.add(this);
  }

  private static String text(TeaVMHost host, String path) {
    try (InputStream in = Objects.requireNonNull(host.getResourceProvider().getResource(path), path)
        .open()) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void transformClass(ClassHolder cls, ClassHolderTransformerContext context) {
    if (cls.getName().equals(HERE + "Bundled")) {
      carry(cls, context);
    }
    if (cls.getName().equals(DIGITS) || cls.getName().equals(HERE + "Maths")) {
      return;
    }
    boolean isOurs = cls.getName().startsWith(OURS);
    boolean isOfLanguage =
        cls.getName().equals("java.lang.Object") || cls.getName().equals("java.lang.Class");
    for (MethodHolder method : cls.getMethods()) {
      Program program = method.getProgram();
      if (program == null) {
        continue;
      }
      Map<Variable, String> constants = new HashMap<>();
      for (BasicBlock block : program.getBasicBlocks()) {
        for (Instruction instruction : block) {
          if (instruction instanceof StringConstantInstruction constant) {
            constants.put(constant.getReceiver(), constant.getConstant());
          } else if (instruction instanceof InvokeInstruction call) {
            if (isOurs) {
              check(call, constants);
            }
            lead(call, isOurs);
            if (isOfLanguage
                && NAMELESS.contains(method.getName())
                && call.getMethod().getName().equals("getName")) {
              toStatic(
                  call,
                  new MethodReference(
                      HERE + "Names", new MethodDescriptor("of", Class.class, String.class)));
            }
          }
        }
      }
    }
  }

  /** Refuses here a regular expression that a page could not read when it is first used. */
  private static void check(InvokeInstruction call, Map<Variable, String> constants) {
    String owner = call.getMethod().getClassName();
    String name = call.getMethod().getName();
    boolean isRegex = owner.equals("java.util.regex.Pattern")
        ? name.equals("compile") || name.equals("matches")
        : owner.equals("java.lang.String") && READ_AS_REGEX.contains(name);
    String regex = isRegex ? constants.get(call.getArguments().get(0)) : null;
    if (regex != null) {
      Dialect.check(regex);
    }
  }

  private static void lead(InvokeInstruction call, boolean isOurs) {
    String owner = call.getMethod().getClassName();
    String name = call.getMethod().getName();
    if (owner.equals(ANALYZER) && name.equals("analyze")) {
      call.setMethod(new MethodReference(DIGITS, call.getMethod().getDescriptor()));
    } else if (owner.equals(ANALYZER) && name.equals("fastIntLog10")) {
      call.setMethod(new MethodReference(
          DIGITS, new MethodDescriptor("wholeLog10", ValueType.DOUBLE, ValueType.INTEGER)));
    } else if (owner.equals("java.lang.Double") && name.equals("parseDouble")) {
      call.setMethod(new MethodReference(
          DIGITS,
          new MethodDescriptor("parse", ValueType.object("java.lang.String"), ValueType.DOUBLE)));
    } else if (owner.equals("java.lang.Character") && OF_SIGNS.contains(name)) {
      call.setMethod(new MethodReference(HERE + "Letters", call.getMethod().getDescriptor()));
    } else if (isOurs && owner.equals("java.lang.Math") && ROUGH.contains(name)) {
      call.setMethod(new MethodReference(HERE + "Maths", call.getMethod().getDescriptor()));
    } else if (isOurs && owner.equals("java.lang.Class") && name.equals("getResourceAsStream")) {
      toStatic(
          call,
          new MethodReference(
              HERE + "Bundled",
              new MethodDescriptor("open", Class.class, String.class, InputStream.class)));
    }
  }

  /** Calls a function, whose first argument is what the method was called of. */
  private static void toStatic(InvokeInstruction call, MethodReference function) {
    List<Variable> arguments = new ArrayList<>();
    arguments.add(call.getInstance());
    arguments.addAll(call.getArguments());
    call.setInstance(null);
    call.setType(InvocationType.SPECIAL);
    call.setMethod(function);
    call.setArguments(arguments.toArray(new Variable[0]));
  }

  /** Writes the method that finds a table by its name. */
  private void carry(ClassHolder bundled, ClassHolderTransformerContext context) {
    MethodHolder method =
        bundled.getMethod(new MethodDescriptor("text", String.class, String.class));
    method.getModifiers().remove(ElementModifier.NATIVE);
    ProgramEmitter emitter = ProgramEmitter.create(method, context.getHierarchy());
    StringChooseEmitter choice = emitter.stringChoice(emitter.var(1, String.class));
    tables.forEach(
        (name, text) -> choice.option(name, () -> emitter.constant(text).returnValue()));
    choice.otherwise(() -> emitter.constantNull(String.class).returnValue());
  }
}
