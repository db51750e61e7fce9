package tautlog.logger.publish.influx;

import java.io.IOException;
import okhttp3.Interceptor;
import okhttp3.Response;
import okhttp3.ResponseBody;
import okio.Buffer;
import okio.BufferedSource;
import okio.ForwardingSource;
import okio.Okio;

/** Ends an answer that is longer than any server's words about a write. Time is bounded by the call's own limit. */
final class ReplyBound implements Interceptor {
    /** Chosen. */
    static final long LONGEST_BYTES = 64 * 1024;

    private volatile String retryAfter = "";

    @Override
    public Response intercept(Chain chain) throws IOException {
        Response response = chain.proceed(chain.request());
        retryAfter = String.valueOf(response.header("Retry-After", ""));
        ResponseBody body = response.body();
        if (body == null) {
            return response;
        }
        BufferedSource bounded = Okio.buffer(new ForwardingSource(body.source()) {
            private long bytes;

            @Override
            public long read(Buffer sink, long most) throws IOException {
                long n = super.read(sink, most);
                bytes += Math.max(0, n);
                if (bytes > LONGEST_BYTES) {
                    throw new IOException("the server's answer is longer than " + LONGEST_BYTES + " bytes");
                }
                return n;
            }
        });
        return response.newBuilder()
                .body(ResponseBody.create(bounded, body.contentType(), -1))
                .build();
    }

    /** For how long the last answer asked to be left alone, in milliseconds; 0 when it did not, or not in seconds. */
    long retryAfterMillis() {
        return retryAfter.matches("\\d{1,9}") ? Long.parseLong(retryAfter) * 1_000 : 0;
    }
}
