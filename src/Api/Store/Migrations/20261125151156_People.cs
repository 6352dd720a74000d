using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Toepan.Api.Store.Migrations
{
    /// <inheritdoc />
    public partial class People : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_token_name",
                schema: "lab",
                table: "token");

            migrationBuilder.AddColumn<Guid>(
                name: "owner_id",
                schema: "lab",
                table: "token",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string[]>(
                name: "scopes",
                schema: "lab",
                table: "token",
                type: "text[]",
                nullable: false,
                defaultValueSql: "'{}'");

            migrationBuilder.AddColumn<DateTimeOffset>(
                name: "disabled_at",
                schema: "lab",
                table: "account",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "disabled_by",
                schema: "lab",
                table: "account",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<DateTimeOffset>(
                name: "last_sign_in_at",
                schema: "lab",
                table: "account",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "invitation",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    whom = table.Column<string>(type: "text", nullable: false),
                    roles = table.Column<string[]>(type: "text[]", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    created_by = table.Column<string>(type: "text", nullable: false),
                    expires_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    withdrawn_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    used_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    used_by = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_invitation", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "recovery_code",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    account_id = table.Column<Guid>(type: "uuid", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    used_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_recovery_code", x => x.id);
                    table.ForeignKey(
                        name: "fk_recovery_code_account_account_id",
                        column: x => x.account_id,
                        principalSchema: "lab",
                        principalTable: "account",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "second_factor",
                schema: "lab",
                columns: table => new
                {
                    account_id = table.Column<Guid>(type: "uuid", nullable: false),
                    protected_key = table.Column<string>(type: "text", nullable: false),
                    confirmed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    last_step = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_second_factor", x => x.account_id);
                    table.ForeignKey(
                        name: "fk_second_factor_account_account_id",
                        column: x => x.account_id,
                        principalSchema: "lab",
                        principalTable: "account",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_token_name",
                schema: "lab",
                table: "token",
                column: "name",
                unique: true,
                filter: "owner_id IS NULL");

            migrationBuilder.CreateIndex(
                name: "ix_token_owner_id_name",
                schema: "lab",
                table: "token",
                columns: new[] { "owner_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_invitation_hash",
                schema: "lab",
                table: "invitation",
                column: "hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_recovery_code_account_id_hash",
                schema: "lab",
                table: "recovery_code",
                columns: new[] { "account_id", "hash" },
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "fk_token_account_owner_id",
                schema: "lab",
                table: "token",
                column: "owner_id",
                principalSchema: "lab",
                principalTable: "account",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_token_account_owner_id",
                schema: "lab",
                table: "token");

            migrationBuilder.DropTable(
                name: "invitation",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "recovery_code",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "second_factor",
                schema: "lab");

            migrationBuilder.DropIndex(
                name: "ix_token_name",
                schema: "lab",
                table: "token");

            migrationBuilder.DropIndex(
                name: "ix_token_owner_id_name",
                schema: "lab",
                table: "token");

            migrationBuilder.DropColumn(
                name: "owner_id",
                schema: "lab",
                table: "token");

            migrationBuilder.DropColumn(
                name: "scopes",
                schema: "lab",
                table: "token");

            migrationBuilder.DropColumn(
                name: "disabled_at",
                schema: "lab",
                table: "account");

            migrationBuilder.DropColumn(
                name: "disabled_by",
                schema: "lab",
                table: "account");

            migrationBuilder.DropColumn(
                name: "last_sign_in_at",
                schema: "lab",
                table: "account");

            migrationBuilder.CreateIndex(
                name: "ix_token_name",
                schema: "lab",
                table: "token",
                column: "name",
                unique: true);
        }
    }
}
