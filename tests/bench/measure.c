// Runs a command and says what it took: seconds of CPU and kilobytes resident at most, on the file
// named first. The measuring process is small, since a process begins with the size of the one it
// comes from.
//   measure FILE COMMAND ARGUMENT...
#include <stdio.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

static double seconds(struct timeval time)
{
    return (double)time.tv_sec + (double)time.tv_usec / 1e6;
}

int main(int count, char **arguments)
{
    int status = 0;
    struct rusage usage;
    if (count < 3)
        return 2;
    pid_t child = fork();
    if (child == 0) {
        execvp(arguments[2], arguments + 2);
        _exit(127);
    }
    if (child < 0 || wait4(child, &status, 0, &usage) != child)
        return 2;
    FILE *file = fopen(arguments[1], "w");
    if (!file)
        return 2;
    fprintf(file, "%.6f %ld\n", seconds(usage.ru_utime) + seconds(usage.ru_stime), usage.ru_maxrss);
    fclose(file);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 128;
}
