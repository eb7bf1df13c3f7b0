package fettle.judgement;

import fettle.document.Origin;

/** What judgement rules call: one call a finding, with facts and values and no text. */
public interface FindingSink {

    /**
     * Draws a finding.
     *
     * @param rule the rule's name, which is its folder's
     * @param subject what it is about, such as {@code part:x}
     */
    Draft draw(String rule, String subject);

    /**
     * Draws a finding on a document, {@code document:} with its path within its catalog.
     *
     * @param rule the rule's name, which is its folder's
     * @param place where in the document
     */
    Draft draw(String rule, Origin place);
}
