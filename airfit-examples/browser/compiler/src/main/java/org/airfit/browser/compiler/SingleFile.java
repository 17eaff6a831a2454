package org.airfit.browser.compiler;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Makes one HTML file of a page's parts: its style, its modules, the library as text for a worker, and data.
 *
 * <p>The page names what goes where, each mark on a line of its own: {@code <!-- style NAME -->}, {@code <!-- script
 * NAME -->}, {@code <!-- text ID NAME… -->} and {@code <!-- policy -->}. Of several modules that import one another one
 * script is made: names at the outermost level of all of them must differ, and an import names what it takes. Of a
 * library that exports, {@code airfit} holds what it exports. The policy lets nothing run and nothing load but what
 * stands in the file, each by its hash; for a page that a server gives out it may let it speak to that server.
 */
public final class SingleFile {

  private static final String HELP = """
      SingleFile, makes one HTML file of a page's parts; the build starts it

        java -cp CLASSES org.airfit.browser.compiler.SingleFile PAGE OUT [FILE...]

      PAGE names what goes where; OUT is written; a FILE goes before one of its name beside PAGE. The word
      "connect-src 'self'" lets the page ask its own server; the word shorter gives its scripts short names.
        --help, -h   prints this
        --version    prints the version
      Exit code 0: written; 1: it could not be; 2: it was called with words that it cannot use.
      """;

  private static final Pattern MARK =
      Pattern.compile("(?m)^[ \\t]*<!-- (style|script|text|policy)((?: [^ >]+)*) -->[ \\t]*$");

  private static final Pattern IMPORT =
      Pattern.compile("(?m)^import (?:\\{[^}]*\\} from )?'\\./([a-z-]+\\.mjs)';[ \\t]*\\R");

  private static final Pattern OTHER_IMPORT = Pattern.compile("(?m)^(?:import |export .* from )");

  private static final Pattern EXPORT =
      Pattern.compile("(?m)^export (?=(?:async )?(?:function|const|let|class)\\b)");

  private static final Pattern EXPORTED = Pattern.compile("export\\s*\\{([^}]*)\\};?\\s*$");

  private static final Pattern COMMENTS =
      Pattern.compile("(?m)^[ \\t]*(?://.*|/\\*(?s:.*?)\\*/)[ \\t]*$");

  /** A file that goes by another name in the page. */
  private static final Pattern NAMED = Pattern.compile("([a-z-]+\\.[a-z]+)=(.+)");

  private static final Pattern LINE_ENDS = Pattern.compile("[ \\t]*\n\\s*");

  /** What is added to the policy of a page that asks its own server. */
  private static final String SERVED = "connect-src 'self'";

  /** Asks for short names in the page's script. */
  private static final String SHORTER = "shorter";

  private final Map<String, Path> sources;
  private final boolean isServed;
  private final boolean isShorter;
  private final StringBuilder scriptHashes = new StringBuilder();
  private final StringBuilder styleHashes = new StringBuilder();

  private SingleFile(Map<String, Path> sources, boolean isServed, boolean isShorter) {
    this.sources = sources;
    this.isServed = isServed;
    this.isShorter = isShorter;
  }

  /**
   * Makes the file.
   *
   * @param args the page, the file to write, and further files that marks name, such as the library; they go before
   *     those of the same name beside the page; {@code NAME=FILE} gives one another name, {@code connect-src 'self'}
   *     lets the page ask the server that it came from, {@code shorter} gives its scripts short names
   * @throws IOException if one of them cannot be read or written, or cannot stand in a page
   */
  public static void main(String[] args) throws IOException {
    OptionalInt answered = ProgramHelp.answered(args, 2, Integer.MAX_VALUE, HELP);
    if (answered.isPresent()) {
      System.exit(answered.getAsInt());
    }
    Path page = Path.of(args[0]);
    Map<String, Path> sources = new LinkedHashMap<>();
    boolean isServed = false;
    boolean isShorter = false;
    for (int i = 2; i < args.length; i++) {
      if (args[i].equals(SERVED)) {
        isServed = true;
        continue;
      }
      if (args[i].equals(SHORTER)) {
        isShorter = true;
        continue;
      }
      Matcher named = NAMED.matcher(args[i]);
      Path path = Path.of(named.matches() ? named.group(2) : args[i]);
      sources.put(named.matches() ? named.group(1) : String.valueOf(path.getFileName()), path);
    }
    Path beside = page.toAbsolutePath().getParent();
    try (var found = Files.list(beside)) {
      found.forEach(path -> sources.putIfAbsent(String.valueOf(path.getFileName()), path));
    }
    String made =
        new SingleFile(sources, isServed, isShorter).page(closeUp(Files.readString(page)));
    Path out = Path.of(args[1]).toAbsolutePath();
    Files.createDirectories(out.getParent());
    Files.writeString(out, made);
  }

  private String page(String template) throws IOException {
    StringBuilder out = new StringBuilder();
    Matcher mark = MARK.matcher(template);
    int told = 0;
    int policy = -1;
    while (mark.find()) {
      out.append(template, told, mark.start());
      told = mark.end();
      String[] names = mark.group(2).strip().split(" ", -1);
      switch (mark.group(1)) {
        case "style" -> out.append(style(names[0]));
        case "script" -> out.append(script(names[0]));
        case "text" -> out.append(text(names));
        default -> policy = out.length();
      }
    }
    out.append(template, told, template.length());
    if (policy < 0) {
      throw new IOException("the page has no line <!-- policy -->");
    }
    return out.insert(policy, policy()).toString();
  }

  private String policy() {
    return "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src"
        + scriptHashes + "; style-src" + styleHashes
        + (isServed ? "; " + SERVED : "")
        + "; img-src data: blob:; worker-src blob:; base-uri 'none'; form-action 'none'\">";
  }

  private String read(String name) throws IOException {
    Path path = sources.get(name);
    if (path == null) {
      throw new IOException(name + " was not given and does not stand beside the page");
    }
    return Files.readString(path).replace("\r\n", "\n");
  }

  private String style(String name) throws IOException {
    String style = "\n" + bare(read(name));
    if (style.toLowerCase(Locale.ROOT).contains("</style")) {
      throw new IOException(name + " would end its own element: it holds </style");
    }
    styleHashes.append(' ').append(hash(style));
    return "<style>" + style + "</style>";
  }

  private String script(String name) throws IOException {
    String joined = joined(name);
    String script = "\n" + (isShorter ? Shorter.script(joined) : joined) + "\n";
    scriptHashes.append(' ').append(hash(script));
    return "<script type=\"module\">" + harmless(name, script) + "</script>";
  }

  /** Texts one after the other in an element that nothing runs: for a worker, or data. */
  private String text(String[] names) throws IOException {
    StringBuilder text = new StringBuilder("\n");
    for (int i = 1; i < names.length; i++) {
      String name = names[i];
      if (name.endsWith(".mjs")) {
        text.append(
            sources.get(name) != null && EXPORTED.matcher(read(name)).find()
                ? library(read(name))
                : joined(name));
      } else if (name.endsWith(".json")) {
        // There this sign stands in texts alone.
        text.append(closeUp(read(name)).replace("<", "\\u003c"));
      } else {
        text.append(read(name));
      }
      text.append('\n');
    }
    return "<script type=\"text/plain\" id=\"" + names[0] + "\">"
        + harmless(names[0], text.toString()) + "</script>";
  }

  /** A module that exports at its end, as a script in which "airfit" holds what it exports. */
  private static String library(String module) {
    Matcher exported = EXPORTED.matcher(module);
    if (!exported.find()) {
      throw new IllegalStateException("the library exports nothing at its end");
    }
    StringBuilder fields = new StringBuilder();
    for (String pair : exported.group(1).split(",", -1)) {
      String[] names = pair.strip().split("\\s+as\\s+", -1);
      if (!names[0].isEmpty()) {
        fields.append(names[names.length - 1]).append(": ").append(names[0]).append(", ");
      }
    }
    return "const airfit = (() => {\n" + module.substring(0, exported.start()) + "\nreturn {"
        + fields + "};\n})();\n";
  }

  /** A module behind those it imports, as one script. */
  private String joined(String name) throws IOException {
    StringBuilder out = new StringBuilder();
    join(name, new LinkedHashSet<>(), out);
    return out.toString();
  }

  private void join(String name, Set<String> joined, StringBuilder out) throws IOException {
    if (!joined.add(name)) {
      return;
    }
    String source = read(name);
    Set<String> imported = IMPORT
        .matcher(source)
        .results()
        .map(found -> found.group(1))
        .collect(Collectors.toCollection(LinkedHashSet::new));
    for (String each : imported) {
      join(each, joined, out);
    }
    if (source.lines().anyMatch(SingleFile::isCut)) {
      throw new IOException(
          name + " has a text over several lines, which would lose what is in front of them");
    }
    String own = bare(EXPORT.matcher(IMPORT.matcher(source).replaceAll("")).replaceAll(""));
    if (OTHER_IMPORT.matcher(own).find()) {
      throw new IOException(name + " imports or exports in a way that cannot be joined:"
          + " write import {…} from './name.mjs' and export in front of what is exported");
    }
    out.append(own);
  }

  /** Whether a text between backticks begins or ends in this line alone. */
  private static boolean isCut(String line) {
    return line.chars().filter(sign -> sign == '`').count() % 2 != 0;
  }

  /** Without comments that stand on lines of their own, and without what is in front of a line and behind it. */
  private static String bare(String source) {
    return closeUp(COMMENTS.matcher(source).replaceAll(""));
  }

  /** Without what is in front of a line and behind it. No text of JSON goes over several lines. */
  private static String closeUp(String source) {
    return LINE_ENDS.matcher(source).replaceAll("\n");
  }

  /** What would end its element or begin a comment cannot stand in a page. */
  private static String harmless(String name, String text) throws IOException {
    String low = text.toLowerCase(Locale.ROOT);
    for (String sign : new String[] {"</script", "<script", "<!--"}) {
      int at = low.indexOf(sign);
      if (at >= 0) {
        throw new IOException(name + " holds " + sign + " in: "
            + text.substring(Math.max(0, at - 40), Math.min(text.length(), at + 40)));
      }
    }
    return text;
  }

  private static String hash(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
