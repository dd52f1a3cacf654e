#include <standbook/base/error.h>

GQuark standbook_error_quark(void)
{
    return g_quark_from_static_string("standbook-error");
}
