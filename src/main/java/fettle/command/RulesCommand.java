package fettle.command;

import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import fettle.view.RulesText;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code rules [RULE]}: what rules there are, and what one of them means. */
final class RulesCommand implements Command {

    static final String PURPOSE = "Lists the rules by topic; with the name of one, tells what it means, why it matters, and the usual remedy.";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command("rules", PURPOSE, "fettle rules", "fettle rules does-not-fit");
        spec.addPositional(PositionalParamSpec.builder().index("0").arity("0..1").paramLabel("RULE").type(String.class).required(false)
                .description("a rule's name, as findings give it").build());
        spec.addOption(Options.output());
        spec.addOption(Options.rules());
        spec.addOption(Options.color());
        return spec;
    }

    @Override
    public boolean judges() {
        return false;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleIndex rules = settings.rules().isPresent() ? settings.ruleBase().index() : RuleIndex.builtIn();
        RulesText text = new RulesText(settings.colour());
        Delivery delivery = new Delivery(settings.output(), streams);
        if (!said.hasMatchedPositional(0)) {
            delivery.text(text.list(rules));
            return ExitCode.FINE;
        }
        String name = said.matchedPositionalValue(0, "");
        RuleInfo rule = rules.find(name).orElseThrow(() -> unknown(name, rules));
        delivery.text(text.page(rule));
        return ExitCode.FINE;
    }

    private static NotChecked unknown(String name, RuleIndex rules) {
        String meant = NotChecked.meant(name, rules.rules().stream().map(RuleInfo::name).toList());
        return new NotChecked("there is no rule " + name + (meant.isEmpty() ? "; \"fettle rules\" lists them all" : meant));
    }
}
