package fettle.editor;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.eclipse.lsp4j.jsonrpc.MessageIssueHandler;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.json.StreamMessageProducer;

/** Takes messages off a stream one by one, so that whatever one of them holds, the next is still found where it begins. */
final class Messages extends StreamMessageProducer {

    /** The most bytes that one message may have: more than the largest document. */
    private static final int MOST = 256 << 20;

    Messages(InputStream input, MessageJsonHandler reader, MessageIssueHandler issues) {
        super(input, reader, issues);
    }

    /** Names of headers may be written in any case, as in the protocols that they are taken from. */
    @Override
    protected void parseHeader(String line, Headers headers) {
        int colon = line.indexOf(':');
        String name = colon < 0 ? line : line.substring(0, colon).strip();
        String known = Stream.of(CONTENT_LENGTH_HEADER, CONTENT_TYPE_HEADER).filter(name::equalsIgnoreCase).findFirst().orElse(name);
        super.parseHeader(colon < 0 ? line : known + line.substring(colon), headers);
    }

    @Override
    protected boolean handleMessage(InputStream input, Headers headers) {
        byte[] body;
        try {
            if (headers.contentLength > MOST) {
                input.skipNBytes(headers.contentLength);
                return true;
            }
            body = input.readNBytes(Math.max(0, headers.contentLength));
        } catch (IOException gone) {
            return false;
        }
        headers.contentLength = body.length;
        headers.charset = StandardCharsets.UTF_8.name();
        try {
            return super.handleMessage(new ByteArrayInputStream(body), headers);
        } catch (StackOverflowError nested) {
            // Brackets within brackets beyond all sense: there is no one to answer to.
            return true;
        }
    }
}
