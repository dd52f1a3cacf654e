// Gives each file named to the harness it is linked with, without libFuzzer: the seeds as a test.
//   replay FILE…
#include "fuzz.h"

int main(int argc, char **argv)
{
    for (int i = 1; i < argc; i++) {
        char *bytes = NULL;
        gsize length = 0;
        if (!g_file_get_contents(argv[i], &bytes, &length, NULL)) {
            fprintf(stderr, "%s cannot be read\n", argv[i]);
            return EXIT_FAILURE;
        }
        LLVMFuzzerTestOneInput((const uint8_t *)bytes, length);
        g_free(bytes);
    }
    printf("%d inputs\n", argc - 1);
    return EXIT_SUCCESS;
}
