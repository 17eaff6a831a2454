package org.airfit.browser.compiler;

import com.google.javascript.jscomp.CheckLevel;
import com.google.javascript.jscomp.Compiler;
import com.google.javascript.jscomp.CompilerOptions;
import com.google.javascript.jscomp.DiagnosticGroups;
import com.google.javascript.jscomp.Result;
import com.google.javascript.jscomp.SourceFile;
import com.google.javascript.jscomp.VariableRenamingPolicy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.logging.Level;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Makes the JavaScript of a module shorter by Closure Compiler: variables inside functions are inlined, share one name,
 * and have short ones.
 *
 * <p>Nothing else is asked of it. Its folding of constants would take {@code a * (b * c)} for {@code a * b * c}, which
 * is another number.
 */
public final class Shorter {

  /** The names that a module exports, at its end. */
  private static final Pattern EXPORTED = Pattern.compile("export\\s*\\{([^}]*)\\};?\\s*$");

  /** A private member, behind a point or where a class has it. */
  private static final Pattern PRIVATE =
      Pattern.compile("(?m)(\\.|^(?:async |static |get |set )*)#([a-zA-Z]+)\\b");

  private static final Pattern ENDS_SO = Pattern.compile("[a-zA-Z]_\\b");

  private static final String HELP = """
      Shorter, makes the JavaScript of a module shorter, by Closure Compiler; the build starts it

        java -cp CLASSES org.airfit.browser.compiler.Shorter FILE

      FILE is the JavaScript; it is written over.
        --help, -h   prints this
        --version    prints the version
      Exit code 0: written; 1: it could not be; 2: it was called with words that it cannot use.
      """;

  private Shorter() {}

  /**
   * Makes a module shorter, in its file.
   *
   * @param args the file
   * @throws IOException if it cannot be read or written, or is no module that exports at its end
   */
  public static void main(String[] args) throws IOException {
    OptionalInt answered = ProgramHelp.answered(args, 1, 1, HELP);
    if (answered.isPresent()) {
      System.exit(answered.getAsInt());
    }
    Path file = Path.of(args[0]);
    Files.writeString(file, shorter(Files.readString(file)));
  }

  /**
   * A module that exports at its end, shorter. It becomes one function, since names at the outermost level are left as
   * they are.
   */
  static String shorter(String module) throws IOException {
    Matcher exported = EXPORTED.matcher(module);
    if (!exported.find()) {
      throw new IOException("the module must export at its end: export {…}");
    }
    StringBuilder fields = new StringBuilder();
    for (String pair : exported.group(1).split(",", -1)) {
      String name = pair.strip().split("\\s+as\\s+", -1)[0];
      if (!name.isEmpty()) {
        fields.append(fields.isEmpty() ? "" : ",").append(name);
      }
    }
    return compiled(
            "const{" + fields + "}=(()=>{" + module.substring(0, exported.start()) + "\nreturn{"
                + fields + "}})();",
            CompilerOptions.LanguageMode.ECMASCRIPT_2021)
        + exported.group() + "\n";
  }

  /**
   * A script that nothing else takes names of, shorter. The compiler does not read private members of classes: they
   * become ordinary ones, whose names end in a sign that no other name ends in.
   */
  static String script(String script) throws IOException {
    if (ENDS_SO.matcher(script).find()) {
      throw new IOException("no name in a script may end in _, which private members get here");
    }
    String open = PRIVATE.matcher(script).replaceAll("$1$2_");
    return compiled("(()=>{" + open + "\n})();", CompilerOptions.LanguageMode.UNSTABLE);
  }

  private static String compiled(String script, CompilerOptions.LanguageMode form)
      throws IOException {
    Compiler.setLoggingLevel(Level.OFF);
    CompilerOptions options = new CompilerOptions();
    options.setLanguageIn(CompilerOptions.LanguageMode.UNSTABLE);
    options.setLanguageOut(form);
    options.setWarningLevel(DiagnosticGroups.CHECK_TYPES, CheckLevel.OFF);
    options.setEmitUseStrict(false);
    options.setTrustedStrings(true);
    options.setCollapseVariableDeclarations(true);
    options.setCoalesceVariableNames(true);
    options.setInlineLocalVariables(true);
    options.setFlowSensitiveInlineVariables(true);
    options.setDeadAssignmentElimination(true);
    options.setRemoveUnusedVariables(CompilerOptions.Reach.LOCAL_ONLY);
    options.setVariableRenaming(VariableRenamingPolicy.LOCAL);
    Compiler compiler = new Compiler();
    Result result =
        compiler.compile(List.of(), List.of(SourceFile.fromCode("module.js", script)), options);
    if (!result.success) {
      throw new IOException("the JavaScript cannot be read: " + result.errors);
    }
    // a[b[c]]>0 would end a script inside a page of XML too soon; no text has these signs
    return compiler.toSource().replace("]]>", "]] >");
  }
}
